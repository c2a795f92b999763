"""Materials with their own measures, and what a changed density or spoon weight does to amounts kept as typed."""

from collections.abc import Sequence
from contextlib import AbstractContextManager
from dataclasses import dataclass
from decimal import Decimal
from typing import Any, TypedDict, Unpack

from django.db import transaction

from inventory.calc.quantities import QuantityError, Typed, check_measure, check_measures
from inventory.catalog.actions.resin_systems import PartGiven, refuse_odd_materials
from inventory.catalog.actions.shelving import named_once, refuse_archived
from inventory.catalog.hazards import is_hazard_code
from inventory.catalog.models import Material, Measure, PackContent, ResinSystem, Supplier
from inventory.catalog.problems import StockUnitFixed
from inventory.catalog.quantities import Figures, amount_as_typed, figures_of, typed_of
from inventory.rest.problems import BadBody
from inventory.shop.change_log import log_added, log_changes
from inventory.shop.editing import edit, lock_for_edit, next_version
from inventory.shop.models import Person
from inventory.shop.numbers import next_number
from inventory.shop.problems import bad_field, bad_fields

LOGGED = (
    "code",
    "stock_unit",
    "density_g_per_ml",
    "grams_per_tsp",
    "shelf_life_days",
    "open_life_days",
    "tracks_lots",
    "single_lot_per_job",
)
CONVERSION_FIELDS = ("stock_unit", "kind", "density_g_per_ml", "grams_per_tsp")


@dataclass(frozen=True)
class MeasureGiven:
    """One of the material's own measures. equals: in a unit, not in another measure. empty_g: the empty container."""

    name: str
    equals: Typed
    empty_g: Decimal | None = None


class MaterialFields(TypedDict, total=False):
    """density_g_per_ml: of a liquid. grams_per_tsp: loose powder, a level teaspoon. Lives in days."""

    code: str
    name: str
    kind: str
    stock_unit: str
    density_g_per_ml: Decimal | None
    grams_per_tsp: Decimal | None
    shelf_life_days: int | None
    open_life_days: int | None
    tracks_lots: bool
    single_lot_per_job: bool
    hazard_codes: list[str]
    cautions: str
    swatch: str
    main_supplier: Supplier | None


@transaction.atomic
def add_material(*, by: Person, measures: Sequence[MeasureGiven] = (), **fields: Unpack[MaterialFields]) -> Material:
    """Put a material on the list, with its measures.

    Raises BadBody for a code that is taken, a hazard code that is none, an archived supplier, and measures that read
    alike, bear the name of a unit, or do not lead to the stock unit.
    """
    refuse_odd_codes(fields)
    refuse_archived(fields.get("main_supplier"), pointer="/main_supplier")
    material = Material(**fields)
    rows = measure_rows(material, measures, bare_figures(material))
    with taken_code(fields.get("code", "")):
        material.number = next_number("material")
        material.save(force_insert=True)
    Measure.objects.bulk_create(rows)
    log_added(record=material, by=by)
    return material


@transaction.atomic
def change_material(
    *,
    material: Material,
    by: Person,
    measures: Sequence[MeasureGiven] | None = None,
    **fields: Unpack[MaterialFields],
) -> Material:
    """Change a material. `measures`, where given, replace those it has.

    A changed density, spoon weight or stock unit converts its measures and the packs that hold it anew, from what was
    typed; what was posted stays. Raises StockUnitFixed once it has been in stock, BadBody as `add_material`.
    """
    refuse_odd_codes(fields)
    locked = lock_for_edit(material)
    refuse_another_unit(locked, fields)
    if fields.get("main_supplier") != locked.main_supplier:
        refuse_archived(fields.get("main_supplier"), pointer="/main_supplier")
    converts_anew = any(name in fields and fields[name] != getattr(locked, name) for name in CONVERSION_FIELDS)  # type: ignore[literal-required]
    was = locked.version
    with taken_code(fields.get("code", "")):
        locked = edit(locked, fields, by=by, logged=LOGGED)
    given = as_given(locked) if measures is None else measures
    has_new_measures = replace_measures(locked, given, by=by) if measures is not None or converts_anew else False
    if converts_anew or has_new_measures:
        convert_packs_anew(locked)
    if converts_anew:
        refuse_broken_systems(locked)
    return next_version(locked) if has_new_measures and locked.version == was else locked


def refuse_odd_codes(fields: MaterialFields) -> None:
    odd = [(index, code) for index, code in enumerate(fields.get("hazard_codes", [])) if not is_hazard_code(code)]
    if odd:
        raise bad_fields(
            [(f"/hazard_codes/{index}", f"{code} is no hazard code: write each alone, as H317.") for index, code in odd]
        )


def refuse_another_unit(material: Material, fields: MaterialFields) -> None:
    if material.is_in_use and fields.get("stock_unit", material.stock_unit) != material.stock_unit:
        sentence = (
            f"{material} has been in stock in {material.get_stock_unit_display()}, and its past is counted in that."
            " Make a new material to keep it in another unit."
        )
        raise StockUnitFixed(sentence, errors=[{"pointer": "/stock_unit", "detail": sentence}])


def bare_figures(material: Material) -> Figures:
    """Its figures without measures: what a measure itself is converted through."""
    is_powder = material.kind == "powder"
    return Figures(material.stock_unit, material.density_g_per_ml, material.grams_per_tsp, is_powder)


def measure_rows(material: Material, measures: Sequence[MeasureGiven], figures: Figures) -> list[Measure]:
    """The rows of a material's measures. Raises BadBody with the pointer of each that cannot be."""
    rows, errors = [], []
    for index, measure in enumerate(measures):
        try:
            rows.append(measure_row(material, measure, figures))
        except QuantityError as error:
            is_about_name = str(error).startswith("“")
            errors.append((f"/measures/{index}/{'name' if is_about_name else 'equals'}", str(error)))
    if errors:
        raise bad_fields(errors)
    refuse_alike(measures)
    return rows


def measure_row(material: Material, measure: MeasureGiven, figures: Figures) -> Measure:
    check_measure(measure.name, measure.equals)
    return Measure(
        material=material,
        name=measure.name,
        quantity=figures.in_stock_unit(measure.equals),
        typed_amount=amount_as_typed(measure.equals.amount),
        typed_unit=measure.equals.unit,
        empty_g=measure.empty_g,
    )


def refuse_alike(measures: Sequence[MeasureGiven]) -> None:
    seen: set[str] = set()
    for index, measure in enumerate(measures):
        if measure.name in seen:
            raise bad_field(f"/measures/{index}/name", f"There are two measures called {measure.name}; rename one.")
        seen.add(measure.name)
    try:
        check_measures({measure.name: measure.equals for measure in measures})
    except QuantityError as error:
        raise bad_field("/measures", str(error)) from error


def as_given(material: Material) -> list[MeasureGiven]:
    return [
        MeasureGiven(row.name, typed_of(row.typed_amount, row.typed_unit), row.empty_g)
        for row in material.measures.all()
    ]


def replace_measures(material: Material, measures: Sequence[MeasureGiven], *, by: Person) -> bool:
    """Make these the material's measures and log what they were; returns whether anything differed."""
    rows = measure_rows(material, measures, bare_figures(material))
    old = list(material.measures.all())
    if [kept_of(row) for row in old] == [kept_of(row) for row in rows]:
        return False
    material.measures.all().delete()
    Measure.objects.bulk_create(rows)
    log_changes(record=material, changes={"measures": (in_words(old), in_words(rows))}, by=by)
    return True


def kept_of(row: Measure) -> tuple[Any, ...]:
    return row.name, row.quantity, row.typed_amount, row.typed_unit, row.empty_g


def in_words(rows: Sequence[Measure]) -> str:
    return "; ".join(f"{row}, {row.empty_g} g empty" if row.empty_g is not None else str(row) for row in rows)


def convert_packs_anew(material: Material) -> None:
    """Give the packs that hold the material their amount in stock units again, from what was typed.

    Raises BadBody where an amount no longer leads there.
    """
    figures = figures_of(material)
    contents = list(PackContent.objects.filter(material=material).select_related("pack"))
    for content in contents:
        try:
            content.quantity = figures.in_stock_unit(typed_of(content.typed_amount, content.typed_unit))
        except QuantityError as error:
            raise bad_field("", f"{content.pack} holds {content}. {error}") from error
    PackContent.objects.bulk_update(contents, ["quantity"])


def refuse_broken_systems(material: Material) -> None:
    """Raise BadBody where a resin system has the material as a part and, as it is now, could not."""
    systems = ResinSystem.objects.filter(parts__material=material).prefetch_related("parts__material")
    for system in systems:
        try:
            refuse_odd_materials([PartGiven(part.role, part.material) for part in system.parts.all()])
        except BadBody as error:
            raise bad_field("/kind", f"{system} has it as a part. {error.detail}") from error


def taken_code(code: str) -> AbstractContextManager[None]:
    return named_once("/code", f"There is a material with the code {code} already. Choose another code.")
