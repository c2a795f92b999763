"""What happened in the invented shop beside its jobs: gifts, loans, a bad hardener, counts, mixes, late bills."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal

from django.db.models import Q

from inventory.calc.quantities import parse_quantity
from inventory.catalog.actions import add_material
from inventory.demo.keeper import Keeper
from inventory.jobs.models import Job
from inventory.pours.actions import log_pour
from inventory.pours.entered import Account, PieceShare, Plan
from inventory.purchasing.actions import ChargeGiven, MaterialLine, PriceGiven, add_charge, receive_delivery, set_prices
from inventory.stock.actions import (
    Counted,
    Input,
    blend,
    count_place,
    hold,
    move,
    note,
    return_goods,
    write_off,
)
from inventory.stock.models import Balance, Basis, Lot

BAD_HARDENER = "QB-0613"


@dataclass(frozen=True)
class Event:
    days_ago: int
    act: Callable[[Keeper, date], None]


def _with_basis(
    keeper: Keeper, day: date, code: str, quantity: str, basis: Basis, supplier: str, reference: str
) -> Lot:
    line = MaterialLine(
        material=keeper.materials[code].pk, quantity=parse_quantity(quantity), cost=Decimal(0), basis=basis
    )
    delivery = receive_delivery(
        supplier=keeper.suppliers[supplier],
        received_on=day,
        lines=[line],
        place=keeper.places["Shop"],
        reference=reference,
        by=keeper.owner,
    )
    return delivery.lines.get().lot


def gift_of_glow(keeper: Keeper, day: date) -> None:
    _with_basis(keeper, day, "PWD-GLOW", "25 g", Basis.FREE, "pigment", "Sample bag")
    _with_basis(keeper, day, "PWD-MOTH", "40 g", Basis.FREE, "pigment", "Sample bag")


def loan_of_discs(keeper: Keeper, day: date) -> None:
    lot = _with_basis(keeper, day, "DSC-220", "20 each", Basis.BORROWED, "sundries", "From the joiner next door")
    back = keeper.at(day + timedelta(days=16), 16)
    return_goods(
        lot=lot, quantity=Decimal(12), to="lender", reason="The rest, given back", happened_at=back, by=keeper.owner
    )


def customers_paint(keeper: Keeper, day: date) -> None:
    _with_basis(keeper, day, "BAS-BONE", "1 qt", Basis.CUSTOMERS_OWN, "paint", "Left by the customer")


def bad_hardener_arrives(keeper: Keeper, day: date) -> None:
    keeper.buy("resin", {"flood-3": 3}, day, numbers={"FLD-B": BAD_HARDENER, "FLD-A": "QA-0598"})


def soft_tops(keeper: Keeper, day: date) -> None:
    """Three tops stay soft; each is sanded and poured again, and the hardener goes on hold."""
    jobs = (
        Job.objects.filter(
            finished_on__isnull=False,
            purpose="customer",
            pieces__pour_pieces__pour__usages__lot__lot_number=BAD_HARDENER,
        )
        .distinct()
        .order_by("id")[:3]
    )
    for number, job in enumerate(jobs):
        piece = job.pieces.order_by("id")[0]
        on = keeper.at(day + timedelta(days=number), 13)
        needs = [("TBL-A", Decimal(12), "fl_oz"), ("TBL-B", Decimal(12), "fl_oz"), ("DSC-220", Decimal(3), "each")]
        keeper.stock_up(needs, on.date())
        plan = Plan(
            pieces=[PieceShare(piece.pk)],
            layer="repair",
            place=keeper.places["Shop"].pk,
            note="Still soft weeks later, all over. Sanded back and poured again.",
        )
        account = Account(usages=keeper.entered(needs), poured_at=on)
        log_pour(plan=plan, account=account, by=keeper.people["crew"])
    lot = Lot.objects.filter(lot_number=BAD_HARDENER).order_by("id")[0]
    since = keeper.at(day + timedelta(days=2), 17)
    hold(lot=lot, reason="Three tops with it stayed soft. Asked the supplier.", since=since, by=keeper.owner)
    note(lot=lot, text="Looks darker than the other pails.", noted_at=since, by=keeper.people["crew"])


def house_bone(keeper: Keeper, day: date) -> None:
    """A jug of house colour, made from paste and dye."""
    needs = [("PST-CHALK", Decimal(120), "g"), ("DYE-UMBER", Decimal(20), "ml")]
    keeper.stock_up(needs, day)
    colour = keeper.materials.get("MIX-BONE") or add_material(
        code="MIX-BONE",
        name="House colour, warm bone",
        kind="paste",
        stock_unit="g",
        single_lot_per_job=True,
        swatch="#efe3cd",
        cautions="Gloves. What went in stands on the jug.",
        by=keeper.owner,
    )
    keeper.materials["MIX-BONE"] = colour
    inputs = [
        Input(_fullest(keeper, "PST-CHALK", day), Decimal(120)),
        Input(_fullest(keeper, "DYE-UMBER", day), Decimal(20)),
    ]
    made = blend(
        material=colour,
        inputs=inputs,
        quantity=Decimal(140),
        made_at=keeper.at(day, 9),
        place=keeper.places["Shop"],
        by=keeper.people["wren"],
    )
    job = Job.objects.filter(purpose="customer", pieces__pour_pieces__pour__status="completed").order_by("-id")[0]
    plan = Plan(pieces=[PieceShare(job.pieces.order_by("id")[0].pk)], layer="accent", place=keeper.places["Shop"].pk)
    account = Account(
        usages=keeper.entered([("MIX-BONE", Decimal(35), "g")]), poured_at=keeper.at(day + timedelta(days=1), 15)
    )
    log_pour(plan=plan, account=account, by=keeper.people["wren"])
    note(lot=made.lot, text="Stir before use.", noted_at=keeper.at(day, 10), by=keeper.people["wren"])


def squeeze_bottle(keeper: Keeper, day: date) -> None:
    """A bottle of black, topped up from a new one."""
    keeper.buy("pigment", {"dye-peat": 1}, day - timedelta(days=1))
    lots = [
        row.lot
        for row in Balance.objects.filter(lot__material=keeper.materials["DYE-PEAT"], quantity__gt=20)
        .select_related("lot__material")
        .order_by("lot_id")
    ][-2:]
    blend(
        material=keeper.materials["DYE-PEAT"],
        inputs=[Input(lot, Decimal(15)) for lot in lots],
        lot_number="Bottle by the bench",
        made_at=keeper.at(day, 8),
        place=keeper.places["Shop"],
        by=keeper.people["crew"],
    )


def spring_count(keeper: Keeper, day: date) -> None:
    _count(keeper, day, codes=("PWD-MOTH", "PWD-PENNY", "PWD-STRAW", "DYE-CHALK", "DYE-PEAT"))


def autumn_count(keeper: Keeper, day: date) -> None:
    _count(keeper, day, codes=("FLD-A", "FLD-B", "TBL-A", "TBL-B", "PST-SLATE", "CUP-QT"))


def _count(keeper: Keeper, day: date, *, codes: tuple[str, ...]) -> None:
    rows = Balance.objects.filter(
        place=keeper.places["Shop"], quantity__gt=1, lot__material__code__in=codes
    ).select_related("lot")
    lines = []
    for row in rows.order_by("id"):
        off = keeper.random.choice([0, 0, 0, -3, -1, 1])
        counted = (row.quantity * (100 + off) / 100).quantize(Decimal("0.1")) if off else row.quantity
        lines.append(Counted(row.lot, counted, "Spoon dust" if off < 0 else ""))
    count_place(place=keeper.places["Shop"], counted_at=keeper.at(day, 18), lines=lines, by=keeper.owner)


def van_kit(keeper: Keeper, day: date) -> None:
    """Some table resin and tape go into the van for work on site."""
    keeper.stock_up([("TBL-A", Decimal(30), "fl_oz"), ("TBL-B", Decimal(30), "fl_oz")], day)
    for code, quantity in (("TBL-A", "500"), ("TBL-B", "500"), ("TAP-EDGE", "60"), ("GLV-NIT", "6")):
        move(
            lot=_fullest(keeper, code, day),
            to=keeper.places["Van"],
            origin=keeper.places["Shop"],
            quantity=Decimal(quantity),
            happened_at=keeper.at(day, 7),
            by=keeper.people["crew"],
        )
    job = Job.objects.filter(handed_over_on__lt=day).order_by("-id").first()
    if job is None:
        return
    plan = Plan(
        pieces=[PieceShare(job.pieces.order_by("id")[0].pk)],
        layer="touch_up",
        place=keeper.places["Van"].pk,
        note="Chip at the front edge, filled on site.",
    )
    needs = [("TBL-A", Decimal(2), "fl_oz"), ("TBL-B", Decimal(2), "fl_oz"), ("GLV-NIT", Decimal(1), "each")]
    account = Account(usages=keeper.entered(needs), poured_at=keeper.at(day, 14))
    log_pour(plan=plan, account=account, by=keeper.people["crew"])


def late_freight(keeper: Keeper, day: date) -> None:
    delivery = next(row for row in keeper.deliveries if row.supplier_id == keeper.suppliers["pigment"].pk)
    add_charge(delivery=delivery, charge=ChargeGiven("freight", Decimal("14.80")), charged_on=day, by=keeper.owner)


def price_put_right(keeper: Keeper, _day: date) -> None:
    delivery = next(row for row in reversed(keeper.deliveries) if row.supplier_id == keeper.suppliers["paint"].pk)
    line = delivery.lines.order_by("position")[0]
    cost = line.cost if line.cost is not None else Decimal(40)
    set_prices(delivery=delivery, prices=[PriceGiven(cost=cost + Decimal("3.50"), line=line.pk)], by=keeper.owner)


def _fullest(keeper: Keeper, code: str, day: date) -> Lot:
    """The lot in the shop with most in it that is good on that day."""
    rows = Balance.objects.filter(
        Q(lot__use_by__isnull=True) | Q(lot__use_by__gte=day),
        place=keeper.places["Shop"],
        lot__material=keeper.materials[code],
        lot__status="usable",
    )
    return rows.select_related("lot__material").order_by("-quantity", "lot_id")[0].lot


def last_touches(keeper: Keeper) -> None:
    """What a visitor should find today: goods whose price is to follow, something expired, something written off."""
    today = keeper.today
    keeper.buy("pigment", {"pwd-glow": 1, "pwd-alu": 1, "pst-slate": 1}, today - timedelta(days=3), priced=False)
    keeper.buy("resin", {"flood-3": 1, "satin": 1}, today - timedelta(days=1), priced=False)
    expired = (
        Balance.objects.filter(lot__use_by__lt=today, quantity__gt=0, place=keeper.places["Shop"])
        .select_related("lot")
        .order_by("lot__use_by", "id")
    )
    if len(expired) > 3:
        write_off(lot=expired[0].lot, quantity=None, reason="Gelled in the can", by=keeper.owner)


EVENTS = [
    Event(520, gift_of_glow),
    Event(470, loan_of_discs),
    Event(430, house_bone),
    Event(395, spring_count),
    Event(330, customers_paint),
    Event(300, squeeze_bottle),
    Event(262, bad_hardener_arrives),
    Event(210, late_freight),
    Event(175, van_kit),
    Event(140, soft_tops),
    Event(95, house_bone),
    Event(70, autumn_count),
    Event(40, price_put_right),
]
