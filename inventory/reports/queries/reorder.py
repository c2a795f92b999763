"""What to order: where each material stands against its reorder point, why that lies there, and which packs to buy."""

from collections import defaultdict
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal
from math import ceil
from statistics import NormalDist

from inventory.calc.demand import NO_USE, WINDOW_DAYS, DailyUse, daily_use, lead_time_demand
from inventory.calc.ordering import Offer, reorder_point, runs_out_on, safety_stock, shortfall, suggested_packs
from inventory.catalog.models import Material, Pack
from inventory.purchasing.queries import MainSupplier, first_receipts, main_suppliers
from inventory.reports.queries.mixable import MixableSystem, mixable_systems
from inventory.reports.queries.sql import day_parameter, fetch
from inventory.shop.clock import today
from inventory.shop.fields import to_decimal
from inventory.shop.reading import PreferredUnits, as_read, preferred_units
from inventory.stock.queries import StockFigures, stock_figures

SERVICE_LEVEL = Decimal("0.95")
PLACES = Decimal("0.000001")


@dataclass(frozen=True, slots=True)
class Why:
    """How a reorder point came about, per shop day and in the stock unit.

    use_during_lead_time: mean × lead time. sd_during_lead_time: sd × √(lead time). z: of the service level.
    """

    mean: Decimal
    sd: Decimal
    days: int
    first_received_on: date | None
    lead_time_days: int
    service_level: Decimal
    z: Decimal
    use_during_lead_time: Decimal
    sd_during_lead_time: Decimal
    in_words: str


@dataclass(frozen=True, slots=True)
class PacksToBuy:
    """So many of a pack. price: of one pack, where one is on record."""

    pack: int
    name: str
    count: int
    price: Decimal | None


@dataclass(frozen=True, slots=True)
class ReorderRow:
    """Where a material stands, in its stock unit. position: available + on order, held against the reorder point.

    safety_stock, reorder_point, why: None where nobody supplies it, as `reason` then says.
    suggested_quantity: what the suggested packs bring of it; what is missing where no pack of it is on record.
    """

    material: int
    code: str
    name: str
    kind: str
    unit: str
    supplier: MainSupplier | None
    on_hand: Decimal
    usable: Decimal
    reserved: Decimal
    available: Decimal
    on_order: Decimal
    position: Decimal
    daily_usage: Decimal
    lead_time_days: int | None
    safety_stock: Decimal | None
    reorder_point: Decimal | None
    is_below: bool
    missing: Decimal
    runs_out_on: date | None
    suggested_quantity: Decimal
    packs: list[PacksToBuy]
    why: Why | None
    reason: str | None
    movements: str
    usage_movements: str


@dataclass(frozen=True, slots=True)
class SupplierOrder:
    """All that is suggested from one supplier, each pack once: a kit serves several rows."""

    supplier: int
    name: str
    packs: list[PacksToBuy]


@dataclass(frozen=True, slots=True)
class Reorder:
    """rows: those below their reorder point first, then by name."""

    on: date
    service_level: Decimal
    window_days: int
    rows: list[ReorderRow]
    orders: list[SupplierOrder]
    systems: list[MixableSystem]


@dataclass(frozen=True, slots=True)
class Standing:
    """A material against its reorder point, before packs are chosen."""

    material: Material
    figures: StockFigures
    use: DailyUse
    supplier: MainSupplier | None
    first_received_on: date | None
    point: Decimal | None
    safety: Decimal | None
    spread: Decimal | None

    @property
    def missing(self) -> Decimal:
        if self.point is None:
            return Decimal(0)
        return shortfall(position=self.figures.available, reorder_point=self.point)

    @property
    def is_below(self) -> bool:
        return self.missing > 0


def reorder() -> Reorder:
    """Every material that is not archived against its reorder point. Eleven SQL statements, however many materials."""
    on = today()
    rows = standings(on)
    packs, units = _packs(), preferred_units()
    counts = {supplier: _chosen(of_one, packs) for supplier, of_one in _by_supplier(rows).items()}
    chosen = {pack: count for of_one in counts.values() for pack, count in of_one.items()}
    return Reorder(
        on=on,
        service_level=SERVICE_LEVEL,
        window_days=WINDOW_DAYS,
        rows=sorted((_row(row, on, packs, chosen, units) for row in rows), key=lambda row: not row.is_below),
        orders=_orders(rows, packs, counts),
        systems=mixable_systems({row.material.pk: row.figures.usable for row in rows}),
    )


def standings(on: date) -> list[Standing]:
    """Materials that are not archived, by name, with what their reorder points rest on. Seven SQL statements."""
    materials = list(Material.objects.filter(is_archived=False).order_by("name", "id"))
    ids = [material.pk for material in materials]
    figures, used = stock_figures(on=on), _used_by_day(on)
    suppliers, firsts = main_suppliers(ids), first_receipts(ids)
    return [
        _standing(
            material,
            figures.get(material.pk, StockFigures()),
            daily_use(used.get(material.pk, {}), today=on, first_received_on=firsts.get(material.pk))
            if material.pk in firsts
            else NO_USE,
            suppliers.get(material.pk),
            firsts.get(material.pk),
        )
        for material in materials
    ]


def _used_by_day(on: date) -> dict[int, dict[date, Decimal]]:
    """Used and wasted, net, by material and day of the window. One SQL statement."""
    since = on - timedelta(days=WINDOW_DAYS)
    rows = fetch(
        # material by material, so that SQLite too reads the index alone
        "SELECT m.material_id, m.happened_on, -SUM(m.quantity) FROM catalog_material t CROSS JOIN stock_movement m "
        "WHERE m.material_id = t.id AND m.happened_on > %s AND m.happened_on <= %s AND m.kind IN ('used', 'wasted') "
        "GROUP BY 1, 2",
        [day_parameter(since), day_parameter(on)],
    )
    found: dict[int, dict[date, Decimal]] = defaultdict(dict)
    for material, day, quantity in rows:
        on_day = date.fromisoformat(day) if isinstance(day, str) else day
        found[material][on_day] = to_decimal(int(quantity), 6)
    return found


def _standing(
    material: Material,
    figures: StockFigures,
    use: DailyUse,
    supplier: MainSupplier | None,
    first_received_on: date | None,
) -> Standing:
    if supplier is None:
        return Standing(material, figures, use, None, first_received_on, None, None, None)
    during = lead_time_demand(use.mean, use.sd, Decimal(supplier.lead_time_days))
    safety = safety_stock(during.sd, SERVICE_LEVEL).quantize(PLACES)
    point = reorder_point(during.mean, safety).quantize(PLACES)
    return Standing(material, figures, use, supplier, first_received_on, point, safety, during.sd)


def _packs() -> dict[int, Pack]:
    rows = Pack.objects.filter(is_archived=False).prefetch_related("contents").order_by("id")
    return {pack.pk: pack for pack in rows}


def _by_supplier(rows: Sequence[Standing]) -> dict[int, list[Standing]]:
    found: dict[int, list[Standing]] = defaultdict(list)
    for row in rows:
        if row.is_below and row.supplier is not None:
            found[row.supplier.supplier].append(row)
    return found


def _chosen(rows: Sequence[Standing], packs: Mapping[int, Pack]) -> dict[int, int]:
    """How many of which packs cover what is missing from one supplier."""
    needs = {row.material.pk: row.missing for row in rows}
    supplier = rows[0].supplier
    offers = [
        Offer(pack.pk, contents)
        for pack in packs.values()
        if supplier is not None
        and pack.supplier_id == supplier.supplier
        and not needs.keys().isdisjoint(contents := contents_of(pack))
    ]
    return suggested_packs(needs, sorted(offers, key=lambda offer: preference(offer, needs)))


def contents_of(pack: Pack) -> dict[int, Decimal]:
    return {content.material_id: content.quantity for content in pack.contents.all()}


def preference(offer: Offer, needs: Mapping[int, Decimal]) -> tuple[bool, int, Decimal, int]:
    """Packs all of whose contents are missing before others; kits before single bottles; then whatever leaves less
    over; then the one put on record first."""
    over = Decimal(0)
    for material, quantity in offer.contents.items():
        need = needs.get(material, Decimal(0))
        over += ceil(need / quantity) * quantity - need
    return not needs.keys() >= offer.contents.keys(), -len(offer.contents), over, offer.pack


def _row(
    row: Standing, on: date, packs: Mapping[int, Pack], chosen: Mapping[int, int], units: PreferredUnits
) -> ReorderRow:
    material, figures = row.material, row.figures
    bring = {pack: count for pack, count in chosen.items() if material.pk in contents_of(packs[pack])}
    suggested = sum((count * contents_of(packs[pack])[material.pk] for pack, count in bring.items()), Decimal(0))
    return ReorderRow(
        material=material.pk,
        code=material.code,
        name=material.name,
        kind=material.kind,
        unit=material.stock_unit,
        supplier=row.supplier,
        on_hand=figures.on_hand,
        usable=figures.usable,
        reserved=figures.reserved,
        available=figures.available,
        on_order=Decimal(0),
        position=figures.available,
        daily_usage=row.use.mean.quantize(PLACES),
        lead_time_days=row.supplier.lead_time_days if row.supplier else None,
        safety_stock=row.safety,
        reorder_point=row.point,
        is_below=row.is_below,
        missing=row.missing,
        runs_out_on=runs_out_on(figures.available, row.use.mean, on),
        suggested_quantity=suggested if bring else row.missing,
        packs=[_to_buy(packs[pack], count) for pack, count in bring.items()],
        why=_why(row, units),
        reason=_why_not(row, is_packed=bool(bring)),
        movements=f"/api/movements/?material={material.pk}",
        usage_movements=f"/api/movements/?material={material.pk}&kind=used&kind=wasted"
        f"&happened_from={on - timedelta(days=max(row.use.days - 1, 0))}&happened_to={on}",
    )


def _to_buy(pack: Pack, count: int) -> PacksToBuy:
    return PacksToBuy(pack.pk, pack.name, count, pack.price)


def _why(row: Standing, units: PreferredUnits) -> Why | None:
    if row.supplier is None or row.safety is None or row.spread is None:
        return None
    lead = row.supplier.lead_time_days
    return Why(
        mean=row.use.mean.quantize(PLACES),
        sd=row.use.sd.quantize(PLACES),
        days=row.use.days,
        first_received_on=row.first_received_on,
        lead_time_days=lead,
        service_level=SERVICE_LEVEL,
        z=Decimal(NormalDist().inv_cdf(float(SERVICE_LEVEL))).quantize(PLACES),
        use_during_lead_time=(row.use.mean * lead).quantize(PLACES),
        sd_during_lead_time=row.spread.quantize(PLACES),
        in_words=_in_words(row, lead, units),
    )


def _in_words(row: Standing, lead: int, units: PreferredUnits) -> str:
    if not row.use.mean or row.supplier is None:
        return "None of it was used lately, so nothing needs to lie ready."
    unit, safety = row.material.stock_unit, row.safety or Decimal(0)
    a_day, during, ups_and_downs, ready = (
        as_read(amount, unit, units) for amount in (row.use.mean, row.use.mean * lead, row.use.sd, safety)
    )
    days = "1 day" if lead == 1 else f"{lead} days"
    return (
        f"{a_day} a day over {row.use.days} days; {days} until {row.supplier.name} delivers take {during}. "
        f"Use goes up and down by {ups_and_downs} a day; {ready} more lie ready so as not to run out in "
        f"19 of 20 such times."
    )


def _why_not(row: Standing, *, is_packed: bool) -> str | None:
    if row.supplier is None:
        return "Nobody supplies it yet: name its main supplier, whose lead time is needed for a reorder point."
    if row.is_below and not is_packed:
        return f"No pack of {row.supplier.name} that holds it is on record, so this is what is missing, not packs."
    return None


def _orders(
    rows: Sequence[Standing], packs: Mapping[int, Pack], counts: Mapping[int, Mapping[int, int]]
) -> list[SupplierOrder]:
    names = {row.supplier.supplier: row.supplier.name for row in rows if row.supplier}
    orders = [
        SupplierOrder(supplier, names[supplier], [_to_buy(packs[pack], count) for pack, count in of_one.items()])
        for supplier, of_one in counts.items()
        if of_one
    ]
    return sorted(orders, key=lambda order: (order.name, order.supplier))


def below_reorder_point(on: date) -> Collection[Standing]:
    """The materials below their reorder point. Seven SQL statements."""
    return [row for row in standings(on) if row.is_below]
