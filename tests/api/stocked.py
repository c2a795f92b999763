"""A small shop with one of everything, made through the real actions: what the whole API is tried on."""

from dataclasses import dataclass
from datetime import date, datetime, timedelta
from decimal import Decimal
from typing import Any
from zoneinfo import ZoneInfo

from inventory.calc.quantities import parse_quantity
from inventory.catalog.actions import (
    ContentGiven,
    MeasureGiven,
    PartGiven,
    add_material,
    add_pack,
    add_resin_system,
    add_supplier,
)
from inventory.jobs.actions import add_customer, make_job
from inventory.jobs.shapes import PieceDraft
from inventory.pours.actions import complete_pour, plan_pour
from inventory.pours.entered import Account, Entered, PieceShare, Plan
from inventory.purchasing.actions import ChargeGiven, MaterialLine, PackLine, receive_delivery
from inventory.shop.models import Person
from inventory.stock.actions import Counted, Input, add_place, blend, count_place, write_off

ZONE = ZoneInfo("America/Chicago")


@dataclass
class Stocked:
    """The ids that paths name, by the noun that stands before the id in the path."""

    ids: dict[str, int]


def stock_a_shop(by: Person) -> Stocked:
    today = datetime.now(ZONE).date()
    supplier = add_supplier(name="Ferrow Resins", lead_time_days=7, by=by)
    customer = add_customer(name="Dela Marsh", by=by)
    shop, van = add_place(name="Shop", by=by), add_place(name="Van", by=by)
    resin = _liquid("R-A", "resin", "1.13", by, supplier)
    hardener = _liquid("R-B", "hardener", "0.96", by, supplier)
    powder = add_material(
        code="PW",
        name="Powder, ash",
        kind="powder",
        stock_unit="g",
        grams_per_tsp=Decimal("1.7"),
        measures=[MeasureGiven("scoop", parse_quantity("4 g"))],
        by=by,
    )
    kit = add_pack(
        supplier=supplier,
        name="Kit",
        price=Decimal("90"),
        contents=[ContentGiven(resin, parse_quantity("2 l")), ContentGiven(hardener, parse_quantity("1 l"))],
        by=by,
    )
    system = add_resin_system(
        name="Two to one",
        parts=[PartGiven("A", resin), PartGiven("B", hardener)],
        ratio_by_volume={"A": Decimal(2), "B": Decimal(1)},
        by=by,
    )
    delivery = _delivery(by, supplier, today, kit, powder)
    lots = {line.material_id: line.lot for line in delivery.lines.select_related("lot__material")}
    made = blend(material=powder, inputs=[Input(lots[powder.pk], Decimal(10))], by=by)
    at = datetime.now(ZONE) - timedelta(days=2)
    count = count_place(place=shop, counted_at=at, lines=[Counted(lots[powder.pk], Decimal(199))], by=by)
    gone = write_off(lot=lots[powder.pk], quantity=Decimal(3), reason="Spilt", by=by)
    job = make_job(customer=customer, title="Bar top", pieces=[_draft("Bar"), _draft("Ledge")], by=by)
    pieces = list(job.pieces.order_by("id"))
    usages = [
        Entered(material=m.pk, quantity=parse_quantity(q)) for m, q in ((resin, "8 fl oz"), (hardener, "4 fl oz"))
    ]
    plan = Plan(pieces=[PieceShare(piece.pk) for piece in pieces], layer="flood_coat", usages=usages)
    done = complete_pour(pour=plan_pour(plan=plan, by=by), account=Account(), by=by)
    plan_pour(plan=plan, by=by)
    return Stocked(
        {
            "suppliers": supplier.pk,
            "customers": customer.pk,
            "places": van.pk,
            "materials": powder.pk,
            "packs": kit.pk,
            "resin-systems": system.pk,
            "deliveries": delivery.pk,
            "lots": lots[resin.pk].pk,
            "blends": made.pk,
            "stock-counts": count.pk,
            "postings": gone.id,
            "jobs": job.pk,
            "pieces": pieces[0].pk,
            "pours": done.pk,
            "people": by.pk,
        }
    )


def _liquid(code: str, kind: str, density: str, by: Person, supplier: Any) -> Any:
    return add_material(
        code=code,
        name=f"Part {code[-1]}",
        kind=kind,
        stock_unit="ml",
        density_g_per_ml=Decimal(density),
        shelf_life_days=365,
        open_life_days=180,
        main_supplier=supplier,
        by=by,
    )


def _delivery(by: Person, supplier: Any, today: date, kit: Any, powder: Any) -> Any:
    return receive_delivery(
        supplier=supplier,
        received_on=today - timedelta(days=10),
        lines=[
            PackLine(pack=kit.pk, count=2, cost=Decimal(180)),
            MaterialLine(material=powder.pk, quantity=parse_quantity("200 g"), cost=Decimal(30), lot_number="P-1"),
        ],
        charges=[ChargeGiven("freight", Decimal(12))],
        by=by,
    )


def _draft(name: str) -> PieceDraft:
    return PieceDraft(name=name, measures={"length_in": "60", "width_in": "24"})
