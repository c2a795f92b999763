"""From an empty shop to a square foot's cost and a lot's trace, as a person does it on the screens."""

import re

from playwright.sync_api import Page, expect

from tests.browser.conftest import OpenPage
from tests.browser.hands import choose, go, part, pick, set_up
from tests.browser.served import Served

AREA = "20"
"""96 × 24 in is 16 sq ft, its front edge 96 × 1.5 in is 1 sq ft, its splash 96 × 4.5 in is 3 sq ft."""

COST_PER_SQFT = "$2.86"
"""What was typed, by hand. Bought: 2 gal resin for 120, 1 gal hardener for 80, 100 g powder for 5, freight 20.50 by
value, which is a tenth: 132, 88 and 5.50. Used: 64 of 256 fl oz resin, 32 of 128 fl oz hardener, 40 of 100 g powder:
132 / 4 + 88 / 4 + 5.50 × 0.4 = 33 + 22 + 2.20 = 57.20. Over 20 sq ft: 57.20 / 20 = 2.86."""


def test_from_the_first_owner_to_cost_per_square_foot_and_where_a_lot_went(
    empty_shop: Served, open_page: OpenPage
) -> None:
    page = open_page(empty_shop)
    set_up(page)
    add_material(page, "Harbour resin A", "RES-A", "Resin (part A)", density="1.13")
    add_material(page, "Harbour hardener B", "HAR-B", "Hardener (part B)", density="0.96")
    add_material(page, "Silt grey powder", "POW-1", "Powder", spoon="1.7")
    add_supplier(page)
    receive(page)
    put_the_job_down(page)
    plan_the_pour(page)
    complete_the_pour(page)
    the_job_tells_its_cost(page)
    the_report_tells_it_once_the_job_is_finished(page)
    the_lot_tells_where_it_went(page)


def add_material(page: Page, name: str, code: str, kind: str, *, density: str = "", spoon: str = "") -> None:
    go(page, "Shelf")
    page.get_by_role("link", name="New material").click()
    page.get_by_label("Name", exact=True).fill(name)
    page.get_by_label("Code", exact=True).fill(code)
    pick(page, "Kind", kind)
    if density:
        page.get_by_label("Density in g per mL").fill(density)
    if spoon:
        page.get_by_label("A level teaspoon, loose, in g").fill(spoon)
    page.get_by_role("button", name="Add it to the shelf").click()
    expect(page.get_by_role("heading", name=name, level=1)).to_be_visible()


def add_supplier(page: Page) -> None:
    go(page, "Shelf")
    page.get_by_role("link", name="Suppliers").click()
    page.get_by_role("button", name="Add a supplier").click()
    dialog = page.get_by_role("dialog", name="Add a supplier")
    dialog.get_by_label("Name", exact=True).fill("Coldbrook Supply")
    dialog.get_by_label("Lead time in days").fill("5")
    dialog.get_by_role("button", name="Add the supplier").click()
    expect(page.get_by_role("listitem").filter(has_text="5 days to the door")).to_be_visible()


def receive(page: Page) -> None:
    go(page, "Receiving")
    page.get_by_role("link", name="Receive a delivery").click()
    choose(page, "Coldbrook Supply")
    lines = [
        ("Harbour resin A", "2 gal", "R-2207", "120"),
        ("Harbour hardener B", "1 gal", "H-0931", "80"),
        ("Silt grey powder", "100 g", "P-14", "5"),
    ]
    for number, (material, quantity, lot_number, cost) in enumerate(lines, start=1):
        if number > 1:
            page.get_by_role("button", name="Something else came too").click()
        line = part(page, f"Line {number}")
        pick(line, "What came", f"{material}, loose")
        line.get_by_label("Amount in all").fill(quantity)
        line.get_by_label(f"{material}: lot number").fill(lot_number)
        line.get_by_label("Cost of this line").fill(cost)
    page.get_by_role("button", name="Add freight, duty or a discount").click()
    part(page, "Charge 1").get_by_role("textbox", name="Amount").fill("20.50")
    page.get_by_role("button", name="Received", exact=True).click()
    expect(page.get_by_text("Received: it is on the shelf")).to_be_visible()
    came = part(page, "What came")
    for lot_number, landed in [("R-2207", "$132.00"), ("H-0931", "$88.00"), ("P-14", "$5.50")]:
        line = came.get_by_role("listitem").filter(has_text=lot_number)
        expect(line.filter(has_text=landed)).to_be_visible()


def put_the_job_down(page: Page) -> None:
    go(page, "Jobs")
    page.get_by_role("link", name="New job").first.click()
    page.get_by_role("combobox", name="Customer").fill("Alba Renwick")
    page.get_by_label("What it is called").fill("Kitchen run")
    page.get_by_label("Name of the top").fill("Long run")
    page.get_by_label("Length, in", exact=True).fill("96")
    page.get_by_label("Width, in", exact=True).fill("24")
    page.get_by_role("button", name="Add an edge").click()
    page.get_by_role("button", name="Add a splash strip").click()
    page.get_by_label("Height, in, splash strip 1").fill("4.5")
    expect(page.get_by_label("Length, in, edge 1")).to_have_value("96")
    expect(page.get_by_label("Height, in, edge 1")).to_have_value("1.5")
    page.get_by_role("button", name="Put the job down").click()
    expect(page.get_by_role("heading", name="Kitchen run", level=1)).to_be_visible()
    expect(part(page, "Tops").get_by_role("listitem").filter(has_text="Long run")).to_contain_text(
        re.compile(rf"{AREA}(\.0+)?\s*sq ft")
    )


def plan_the_pour(page: Page) -> None:
    page.get_by_role("link", name="Plan or log a pour").click()
    choose(page, "Flood coat")
    expect(page.get_by_role("checkbox", name="Long run")).to_be_checked()
    for material, quantity in [
        ("Harbour resin A", "64 fl oz"),
        ("Harbour hardener B", "32 fl oz"),
        ("Silt grey powder", "40 g"),
    ]:
        pick(page, re.compile("^Add a(nother)? material"), material)
        line = page.get_by_role("list", name="What goes in").get_by_role("listitem").filter(has_text=material)
        line.get_by_label("How much").fill(quantity)
    page.get_by_role("button", name="Plan the pour").click()
    expect(page.get_by_role("heading", name="Flood coat on Long run", level=1)).to_be_visible()
    expect(page.get_by_role("list", name="What goes in")).to_contain_text("R-2207")


def complete_the_pour(page: Page) -> None:
    page.get_by_role("button", name="All as planned").click()
    page.get_by_role("button", name="Pour completed").click()
    went_in = part(page, "What went in")
    for lot_number in ("R-2207", "H-0931", "P-14"):
        expect(went_in.get_by_text(lot_number).first).to_be_visible()
    expect(page.get_by_role("main")).to_contain_text("$57.20")


def the_job_tells_its_cost(page: Page) -> None:
    page.get_by_role("link", name="Kitchen run").first.click()
    cost = part(page, "What it cost")
    expect(cost).to_contain_text(f"{COST_PER_SQFT}per sq ft")
    cost.get_by_role("button", name="how this cost came about").click()
    expect(cost).to_contain_text("$57.20")
    for material, used in [
        ("Harbour resin A", "$33.00"),
        ("Harbour hardener B", "$22.00"),
        ("Silt grey powder", "$2.20"),
    ]:
        row = cost.get_by_role("listitem").filter(has_text=material).first
        expect(row).to_contain_text(used)


def the_report_tells_it_once_the_job_is_finished(page: Page) -> None:
    go(page, "Figures")
    page.get_by_role("link", name="Cost per square foot").click()
    expect(page.get_by_text("No tops here")).to_be_visible()
    go(page, "Jobs")
    page.get_by_role("link", name="Kitchen run").first.click()
    expect(part(page, "Pours")).to_contain_text("Poured")
    page.get_by_role("button", name="More", exact=True).click()
    page.get_by_role("menuitem", name="Finish the job").click()
    page.get_by_role("button", name="The job is finished").click()
    expect(page.get_by_role("dialog")).to_have_count(0)

    go(page, "Figures")
    page.get_by_role("link", name="Cost per square foot").click()
    rows = page.get_by_role("list", name="Cost per square foot, row by row").get_by_role("listitem")
    expect(rows).to_have_count(1)
    expect(rows).to_contain_text(COST_PER_SQFT)
    expect(rows).to_contain_text("$57.20")
    rows.get_by_role("button", name="how it came about").click()
    expect(rows).to_contain_text("$33.00")
    expect(page.get_by_role("main")).to_contain_text("aterials only")


def the_lot_tells_where_it_went(page: Page) -> None:
    go(page, "Shelf")
    page.get_by_label("A material, or the number on a label").fill("R-2207")
    page.get_by_role("list", name="Lots of Harbour resin A").get_by_role("link").click()
    went = part(page, "Where it went")
    expect(went).to_contain_text("1 top in 1 pour")
    expect(went.get_by_role("listitem").filter(has_text="Kitchen run · Alba Renwick").last).to_contain_text(
        re.compile(r"Long run.*64\s*fl oz", re.DOTALL)
    )
    went.get_by_role("link", name="Long run").click()
    expect(page.get_by_role("heading", name="Long run", level=1)).to_be_visible()
