"""What a person does on the screens, by the labels that they read."""

import re

from playwright.sync_api import Locator, Page, expect


def sign_in(page: Page, username: str = "owner", password: str = "pour-slowly") -> None:
    page.get_by_label("Sign-in name").fill(username)
    page.get_by_label("Password", exact=True).fill(password)
    page.get_by_role("button", name="Sign in").click()
    expect(page.get_by_role("button", name="Sign in")).to_have_count(0)


def set_up(page: Page) -> None:
    """The first start: a shop of its own, and its owner."""
    expect(page.get_by_role("heading", name="Set up the shop")).to_be_visible()
    page.get_by_label("Name", exact=True).fill("Millrace Tops")
    page.get_by_label("Town").fill("Sedgeley")
    page.get_by_label("Your name").fill("Odile Farr")
    page.get_by_label("Sign-in name").fill("odile")
    page.get_by_label("Password", exact=True).fill("grey-heron-47")
    page.get_by_role("button", name="Open the shop").click()
    expect(page.get_by_role("heading", name="Today")).to_be_visible()
    expect(page.get_by_role("link", name="Millrace Tops")).to_be_visible()


def pick(where: Page | Locator, label: str | re.Pattern[str], choice: str) -> None:
    """Chooses one of a list: opens it, and takes the option of that name."""
    page = where if isinstance(where, Page) else where.page
    field = where.get_by_role("combobox", name=label)
    if field.count() == 0:
        field = where.get_by_role("textbox", name=label)
    field.click()
    page.get_by_role("option", name=re.compile(rf"^{re.escape(choice)}")).first.click()


def choose(where: Page | Locator, choice: str) -> None:
    """Taps one of the keys that stand side by side: the label over the hidden radio or tick."""
    where.locator("label", has_text=re.compile(rf"^{re.escape(choice)}")).first.click()


def part(page: Page, title: str) -> Locator:
    return page.get_by_role("region", name=title, exact=True)


TABS = {"Today": "Today", "Shelf": "The shelf", "Receiving": "Receiving", "Jobs": "Jobs", "Figures": "Figures"}


def go(page: Page, tab: str) -> None:
    """To one of the shop's jobs, by its tab; until its sheet is there."""
    page.get_by_role("navigation", name="The shop's jobs").get_by_role("link", name=tab, exact=True).click()
    expect(page.get_by_role("heading", name=TABS[tab], level=1)).to_be_visible(timeout=15_000)
