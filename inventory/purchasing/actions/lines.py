"""What somebody says came in, line by line, brought to materials, stock units and known or awaited prices."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from fractions import Fraction

from inventory.calc.landed_cost import KitContent, cost_at, divide_kit
from inventory.calc.quantities import QuantityError, Typed, convert_exactly
from inventory.calc.quantities import UnitMismatch as NoWayToUnit
from inventory.catalog.models import Material, MaterialKind, Pack, PackContent
from inventory.catalog.quantities import amount_as_typed, figures_of, stock_quantity, typed_of
from inventory.catalog.queries import materials as whole_materials
from inventory.catalog.queries import packs as whole_packs
from inventory.purchasing.problems import LotTwice
from inventory.purchasing.queries import LastPrice, last_prices
from inventory.shop.fields import to_decimal, to_whole
from inventory.shop.problems import bad_field, bad_fields
from inventory.stock.models import Basis

NOT_PAID = (Basis.FREE, Basis.BORROWED, Basis.CUSTOMERS_OWN)


@dataclass(frozen=True, slots=True)
class MaterialLine:
    """Some of one material, in one lot.

    material: its id. quantity: as typed, more than nothing. containers: how many it came in. lot_number: empty where
    none is on the label. cost: money for the line; 0 needs a basis; None: price to follow, unless a basis says that
    nothing was paid.
    """

    material: int
    quantity: Typed
    lot_number: str = ""
    containers: int = 1
    cost: Decimal | None = None
    basis: Basis | None = None
    made_on: date | None = None
    expires_on: date | None = None


@dataclass(frozen=True, slots=True)
class ContentLabel:
    """What stands on the containers of one content of a pack. containers: all of them; as many as packs unless said."""

    material: int
    lot_number: str = ""
    containers: int | None = None
    made_on: date | None = None
    expires_on: date | None = None


@dataclass(frozen=True, slots=True)
class PackLine:
    """So many of a pack, at one cost for all of them, which is divided over what is in it (`calc.landed_cost`).

    pack: its id. contents: labels, for as many of the contents as have one. cost, basis: as in MaterialLine.
    """

    pack: int
    count: int = 1
    cost: Decimal | None = None
    basis: Basis | None = None
    contents: Sequence[ContentLabel] = field(default_factory=tuple)


Line = MaterialLine | PackLine


@dataclass(slots=True)
class Prepared:
    """One lot to be: all that will stand in its delivery line.

    pointer: where the body speaks of it. quantity: in the stock unit. cost: ten-thousandths, None: to follow.
    booked: what the ledger is to carry before charges, ten-thousandths.
    """

    pointer: str
    material: Material
    typed: Typed
    quantity: Decimal
    containers: int
    lot_number: str
    made_on: date | None
    expires_on: date | None
    cost: int | None
    basis: Basis
    booked: int = 0
    pack: Pack | None = None
    pack_line: int | None = None
    pack_count: int | None = None

    @property
    def whole_quantity(self) -> int:
        return to_whole(self.quantity, 6)


def prepare(lines: Sequence[Line], *, supplier: int, received_on: date) -> list[Prepared]:
    """The lots that these lines become, in order, a kit's contents one after another.

    At most five SQL statements, however many lines. Raises BadBody for what cannot be, UnitMismatch for a quantity that
    does not lead to its material's stock unit, LotTwice.
    """
    materials, packs = _look_up(lines, supplier=supplier)
    prepared: list[Prepared] = []
    kits: list[tuple[list[Prepared], list[PackContent], int | None]] = []
    pack_line = 0
    for index, line in enumerate(lines):
        where = f"/lines/{index}"
        cost, basis = money_of(line.cost, line.basis, pointer=where)
        if isinstance(line, MaterialLine):
            prepared.append(_of_material(line, materials[line.material], cost, basis, where))
            continue
        pack_line += 1
        contents = list(packs[line.pack].contents.all())
        lots = _of_pack(line, packs[line.pack], contents, basis, where, pack_line)
        prepared += lots
        kits.append((lots, contents, cost))
    _check_days(prepared, received_on)
    _refuse_lot_twice(prepared)
    prices = last_prices({lot.material.pk for lot in prepared}) if kits or _any_to_follow(prepared) else {}
    for lots, contents, cost in kits:
        if cost is not None:
            _divide(cost, lots, contents, prices)
    for lot in prepared:
        lot.booked = lot.cost if lot.cost is not None else provisional_cost(lot, prices)
    return prepared


def money_of(cost: Decimal | None, basis: Basis | None, *, pointer: str) -> tuple[int | None, Basis]:
    """Cost in ten-thousandths (None: to follow) and what it rests on. Raises BadBody where the two do not agree."""
    if cost is None:
        return (0, basis) if basis in NOT_PAID else (None, Basis.PAID)
    if cost < 0:
        raise bad_field(f"{pointer}/cost", "A cost is 0 or more. Give a discount as a charge below zero.")
    if cost == 0 and basis not in NOT_PAID:
        raise bad_field(
            f"{pointer}/cost",
            "A cost of 0 needs a basis: free, borrowed or customers_own. Leave the cost out where it is to follow.",
        )
    if cost > 0 and basis in NOT_PAID:
        raise bad_field(
            f"{pointer}/basis",
            "What is free, borrowed or the customer's own costs 0. Leave the basis out where something was paid.",
        )
    return to_whole(cost, 4), basis or Basis.PAID


def provisional_cost(lot: Prepared, prices: Mapping[int, LastPrice]) -> int:
    """What a lot would cost at its material's last price; 0 where it never had one."""
    last = prices.get(lot.material.pk)
    return cost_at(last.price, quantity=lot.whole_quantity) if last else 0


def grams_of(material: Material, quantity: Decimal) -> Fraction | None:
    """What a quantity of a material weighs, None where neither its unit nor its figures say."""
    try:
        return convert_exactly(
            Typed(Fraction(quantity), material.stock_unit),
            to="g",
            density_g_per_ml=material.density_g_per_ml,
            grams_per_tsp=material.grams_per_tsp,
            is_powder=material.kind == MaterialKind.POWDER,
        )
    except NoWayToUnit:
        return None


def kit_content(
    share: Decimal | None, material: Material, quantity: Decimal, prices: Mapping[int, LastPrice]
) -> KitContent:
    last = prices.get(material.pk)
    return KitContent(
        share=None if share is None else Fraction(share),
        last_value=last.price * Fraction(quantity) if last else None,
        grams=grams_of(material, quantity),
    )


def _look_up(lines: Sequence[Line], *, supplier: int) -> tuple[dict[int, Material], dict[int, Pack]]:
    wanted = {line.material for line in lines if isinstance(line, MaterialLine)}
    wanted_packs = {line.pack for line in lines if isinstance(line, PackLine)}
    materials = whole_materials().in_bulk(list(wanted)) if wanted else {}
    packs = whole_packs().in_bulk(list(wanted_packs)) if wanted_packs else {}
    errors = []
    for index, line in enumerate(lines):
        where = f"/lines/{index}"
        if isinstance(line, MaterialLine):
            errors += _why_not(materials.get(line.material), f"{where}/material", line.material)
            continue
        pack = packs.get(line.pack)
        errors += _why_not(pack, f"{where}/pack", line.pack)
        if pack and pack.supplier_id != supplier:
            errors.append((f"{where}/pack", f"{pack} is sold by {pack.supplier}, not by who delivered."))
        if pack:
            errors += _wrong_labels(line, pack, where)
    if errors:
        raise bad_fields(errors)
    return materials, packs


def _why_not(record: Material | Pack | None, pointer: str, pk: int) -> list[tuple[str, str]]:
    if record is None:
        return [(pointer, f"There is no such record: {pk}.")]
    if record.is_archived:
        return [(pointer, f"{record} is archived. Put it back on the list first, or choose another.")]
    return []


def _wrong_labels(line: PackLine, pack: Pack, where: str) -> list[tuple[str, str]]:
    inside = {content.material_id for content in pack.contents.all()}
    errors = []
    seen: set[int] = set()
    for index, label in enumerate(line.contents):
        pointer = f"{where}/contents/{index}/material"
        if label.material not in inside:
            errors.append((pointer, f"{pack} does not hold that material. Give it a line of its own."))
        elif label.material in seen:
            errors.append((pointer, "That content stands here already. Packs of another lot get a line of their own."))
        seen.add(label.material)
    return errors


def _of_material(line: MaterialLine, material: Material, cost: int | None, basis: Basis, where: str) -> Prepared:
    quantity = stock_quantity(line.quantity, material=material, pointer=f"{where}/quantity")
    if quantity <= 0:
        raise bad_field(f"{where}/quantity", "More than nothing came in, or the line is left out.")
    return Prepared(
        pointer=where,
        material=material,
        typed=figures_of(material).known(line.quantity),
        quantity=quantity,
        containers=line.containers,
        lot_number=line.lot_number.strip(),
        made_on=line.made_on,
        expires_on=line.expires_on,
        cost=cost,
        basis=basis,
    )


def _of_pack(
    line: PackLine, pack: Pack, contents: Sequence[PackContent], basis: Basis, where: str, pack_line: int
) -> list[Prepared]:
    labels = {label.material: (index, label) for index, label in enumerate(line.contents)}
    lots = []
    for content in contents:
        index, label = labels.get(content.material_id, (None, ContentLabel(content.material_id)))
        typed = typed_of(content.typed_amount, content.typed_unit)
        try:
            typed = Typed(typed.amount * line.count, typed.unit)
            Typed(Fraction(content.quantity) * line.count, content.material.stock_unit)
        except QuantityError as error:
            raise bad_field(f"{where}/count", f"{line.count} of {pack} are too much for one line. {error}") from error
        lots.append(
            Prepared(
                pointer=where if index is None else f"{where}/contents/{index}",
                material=content.material,
                typed=typed,
                quantity=content.quantity * line.count,
                containers=label.containers or line.count,
                lot_number=label.lot_number.strip(),
                made_on=label.made_on,
                expires_on=label.expires_on,
                cost=None,
                basis=basis,
                pack=pack,
                pack_line=pack_line,
                pack_count=line.count,
            )
        )
    return lots


def _divide(
    cost: int, lots: Sequence[Prepared], contents: Sequence[PackContent], prices: Mapping[int, LastPrice]
) -> None:
    shares = [content.cost_share_percent for content in contents]
    kit = [kit_content(share, lot.material, lot.quantity, prices) for share, lot in zip(shares, lots, strict=True)]
    for lot, part in zip(lots, divide_kit(cost, kit), strict=True):
        lot.cost = part


def _check_days(lots: Sequence[Prepared], received_on: date) -> None:
    errors = []
    for lot in lots:
        if lot.made_on and lot.made_on > received_on:
            errors.append((f"{lot.pointer}/made_on", "It cannot have been made after it came in. Check both days."))
        if lot.made_on and lot.expires_on and lot.expires_on < lot.made_on:
            errors.append((f"{lot.pointer}/expires_on", "It cannot expire before it was made. Check both days."))
    if errors:
        raise bad_fields(errors)


def _refuse_lot_twice(lots: Sequence[Prepared]) -> None:
    seen: set[tuple[int, str]] = set()
    for lot in lots:
        key = lot.material.pk, lot.lot_number
        if lot.lot_number and key in seen:
            sentence = f"{lot.material}, lot {lot.lot_number}, is in this delivery already. Give it one line."
            raise LotTwice(
                sentence,
                errors=[{"pointer": f"{lot.pointer}/lot_number", "detail": sentence}],
                remedies=[{"kind": "one_line", "text": "Give one line with the whole quantity and all containers."}],
                material=lot.material.pk,
                lot_number=lot.lot_number,
            )
        seen.add(key)


def _any_to_follow(lots: Sequence[Prepared]) -> bool:
    return any(lot.cost is None for lot in lots)


def typed_columns(typed: Typed) -> dict[str, str]:
    """How the line keeps what was typed."""
    return {"typed_amount": amount_as_typed(typed.amount), "typed_unit": typed.unit}


def money(ten_thousandths: int) -> Decimal:
    return to_decimal(ten_thousandths, 4)
