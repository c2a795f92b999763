"""The materials of a pour, read in one statement, and amounts brought to their stock units."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass

from django.db import connection

from inventory.calc.quantities import Measures, QuantityError, Typed, UnitMismatch, weighed
from inventory.catalog import problems
from inventory.catalog.models import Material, MaterialKind
from inventory.catalog.quantities import WORDS_FOR_FIGURES, Figures, amount_as_typed, typed_of
from inventory.pours.entered import Entered
from inventory.pours.models import PlannedUsage, Provenance
from inventory.shop.fields import to_whole
from inventory.shop.problems import bad_field, bad_fields
from inventory.shop.rows import Columns

MIXED_KINDS = frozenset(
    {MaterialKind.RESIN, MaterialKind.HARDENER, MaterialKind.DYE, MaterialKind.PASTE, MaterialKind.POWDER}
)
"""What is stirred into a bucket, and so is in what is left of it."""

FIELDS = (
    "id",
    "code",
    "name",
    "kind",
    "stock_unit",
    "density_g_per_ml",
    "grams_per_tsp",
    "tracks_lots",
    "single_lot_per_job",
)
MATERIAL = Columns(Material, "m", *FIELDS)


@dataclass(frozen=True, slots=True)
class Stuff:
    """A material with what its amounts convert through. `record` has the fields named in FIELDS only."""

    record: Material
    figures: Figures

    @property
    def is_mixed(self) -> bool:
        return self.record.kind in MIXED_KINDS


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """One entered amount in the material's stock unit.

    quantity: millionths, > 0. pointer: where it stands in the body.
    """

    position: int
    pointer: str
    material: int
    quantity: int
    typed_amount: str
    typed_unit: str
    weighed_before: str = ""
    weighed_after: str = ""
    lot: int | None = None
    place: int | None = None
    bucket: int | None = None
    is_waste: bool = False
    reason: str = ""
    provenance: str
    lot_provenance: str


def read_stuff(materials: Collection[int]) -> dict[int, Stuff]:
    """The materials with their measures, by id; ids that are none are left out. One SQL statement."""
    asked = sorted(set(materials))
    if not asked:
        return {}
    with connection.cursor() as cursor:
        cursor.execute(
            f"SELECT s.name, s.typed_amount, s.typed_unit, {MATERIAL.sql} FROM catalog_material m "
            "LEFT JOIN catalog_measure s ON s.material_id = m.id "
            f"WHERE m.id IN ({', '.join(['%s'] * len(asked))}) ORDER BY m.id, s.id",
            asked,
        )
        rows = cursor.fetchall()
    records: dict[int, Material] = {}
    measures: dict[int, dict[str, Typed]] = {}
    for name, amount, unit, *values in rows:
        record = MATERIAL.record(values)
        own = measures.setdefault(record.pk, {})
        if name is not None:
            own[name] = typed_of(amount, unit)
        records.setdefault(record.pk, record)
    return {key: Stuff(record, figures(record, measures[key])) for key, record in records.items()}


def stuff_of(planned: Sequence[PlannedUsage]) -> dict[int, Stuff]:
    """The materials of what was planned, by id, without their own measures: enough where nothing is to be converted."""
    records = {line.material_id: line.material for line in planned}
    return {key: Stuff(record, figures(record, {})) for key, record in records.items()}


def figures(record: Material, measures: Measures) -> Figures:
    return Figures(
        stock_unit=record.stock_unit,
        density_g_per_ml=record.density_g_per_ml,
        grams_per_tsp=record.grams_per_tsp,
        is_powder=record.kind == MaterialKind.POWDER,
        measures=measures,
    )


def wanted_of(
    entered: Sequence[Entered], stuff: Mapping[int, Stuff], *, usual: Provenance, first: int = 0
) -> list[Wanted]:
    """What was entered, in stock units.

    usual: how an amount is known where its entry does not say so and it was not weighed.
    first: the position of the first, after those that the pour has.
    Raises BadBody for a material that is none and for an amount that cannot be kept, UnitMismatch.
    """
    unknown = [index for index, line in enumerate(entered) if line.material not in stuff]
    if unknown:
        raise bad_fields([(f"/usages/{index}/material", "There is no material with this id.") for index in unknown])
    return [
        one_wanted(line, stuff[line.material], usual=usual, position=first + index, pointer=f"/usages/{index}")
        for index, line in enumerate(entered)
    ]


def one_wanted(line: Entered, stuff: Stuff, *, usual: Provenance, position: int, pointer: str) -> Wanted:
    typed = said(line, pointer)
    before, after = line.weighed_before, line.weighed_after
    return Wanted(
        position=position,
        pointer=pointer,
        material=line.material,
        quantity=in_stock_unit(typed, stuff, pointer=f"{pointer}/{'weighed' if before else 'quantity'}"),
        typed_amount=("~" if typed.is_rough else "") + amount_as_typed(typed.amount),
        typed_unit=stuff.figures.known(typed).unit,
        weighed_before=str(before) if before else "",
        weighed_after=str(after) if after else "",
        lot=line.lot,
        place=line.place,
        bucket=line.bucket,
        is_waste=line.is_waste,
        reason=line.reason,
        provenance=line.provenance or (Provenance.WEIGHED if before else usual),
        lot_provenance=line.lot_provenance or (Provenance.TYPED if line.lot else Provenance.ASSUMED),
    )


def said(line: Entered, pointer: str) -> Typed:
    """The amount as it was said, or as two weighings give it."""
    if line.weighed_before is None or line.weighed_after is None:
        if line.quantity is None:
            raise bad_field(f"{pointer}/quantity", "Say how much: give a quantity, or the weights before and after.")
        return line.quantity
    try:
        return weighed(line.weighed_before, line.weighed_after)
    except QuantityError as error:
        raise bad_field(f"{pointer}/weighed", str(error)) from error


def in_stock_unit(typed: Typed, stuff: Stuff, *, pointer: str) -> int:
    """Millionths of the stock unit, > 0. Raises UnitMismatch, BadBody."""
    try:
        quantity = to_whole(stuff.figures.in_stock_unit(typed), 6)
    except UnitMismatch as error:
        raise lacks_figure(error, stuff, pointer) from error
    except QuantityError as error:
        raise bad_field(pointer, str(error)) from error
    if quantity <= 0:
        raise bad_field(pointer, "Give more than nothing, or leave it out.")
    return quantity


def lacks_figure(error: UnitMismatch, stuff: Stuff, pointer: str) -> problems.UnitMismatch:
    """The problem that says which figure the material lacks."""
    material = stuff.record
    return problems.UnitMismatch(
        f"{material.name}: {error}",
        errors=[{"pointer": pointer, "detail": str(error)}],
        remedies=[{"kind": "give_figure", "text": WORDS_FOR_FIGURES[error.missing], "material": material.pk}],
        missing=error.missing,
        material=material.pk,
        stock_unit=material.stock_unit,
    )


def planned_again(planned: Sequence[PlannedUsage]) -> list[Wanted]:
    """What was planned, as what went in: the amounts as they were kept, whatever figures have changed since."""
    return [
        Wanted(
            position=line.position,
            pointer=f"/planned/{line.position}",
            material=line.material_id,
            quantity=to_whole(line.quantity, 6),
            typed_amount=line.typed_amount,
            typed_unit=line.typed_unit,
            weighed_before=line.weighed_before,
            weighed_after=line.weighed_after,
            lot=line.lot_id,
            place=line.place_id,
            bucket=line.bucket,
            is_waste=line.is_waste,
            reason=line.reason,
            provenance=line.provenance,
            lot_provenance=line.lot_provenance,
        )
        for line in planned
    ]
