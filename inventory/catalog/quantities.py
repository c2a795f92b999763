"""From what somebody said of a material to its stock unit."""

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from decimal import Decimal
from fractions import Fraction

from inventory.calc.quantities import (
    Measures,
    QuantityError,
    Typed,
    UnitMismatch,
    convert,
    format_quantity,
    read_quantity,
)
from inventory.calc.quantities.measures import find_measure
from inventory.calc.units import UNITS
from inventory.catalog import problems
from inventory.catalog.models import Material, MaterialKind, Measure
from inventory.shop.problems import bad_field

WORDS_FOR_FIGURES = {
    "density_g_per_ml": "Give the material its density in g per mL, from the data sheet.",
    "grams_per_tsp": "Weigh a level teaspoon of the loose powder and give the material its grams per teaspoon.",
    "measure": "Add a measure to the material that says what one equals.",
}


@dataclass(frozen=True)
class Figures:
    """What a material's quantities convert through.

    stock_unit: a code of calc.units. density_g_per_ml: of a liquid. grams_per_tsp: loose powder, a level teaspoon.
    measures: the material's own, by name.
    """

    stock_unit: str
    density_g_per_ml: Decimal | None = None
    grams_per_tsp: Decimal | None = None
    is_powder: bool = False
    measures: Measures = field(default_factory=dict)

    def known(self, typed: Typed) -> Typed:
        """The same quantity with its measure's own name: 2 `Pumps` are 2 `pump`."""
        if typed.unit in UNITS:
            return typed
        name = find_measure(typed.unit, self.measures)
        return typed if name is None else replace(typed, unit=name)

    def in_stock_unit(self, typed: Typed) -> Decimal:
        """A quantity in the stock unit, to six places. Raises QuantityError, among them UnitMismatch."""
        return convert(
            self.known(typed),
            to=self.stock_unit,
            density_g_per_ml=self.density_g_per_ml,
            grams_per_tsp=self.grams_per_tsp,
            measures=self.measures,
            is_powder=self.is_powder,
        )


def figures_of(material: Material) -> Figures:
    """A material's figures. One SQL statement, none where its measures are prefetched."""
    return Figures(
        stock_unit=material.stock_unit,
        density_g_per_ml=material.density_g_per_ml,
        grams_per_tsp=material.grams_per_tsp,
        is_powder=material.kind == MaterialKind.POWDER,
        measures=measures_of(material.measures.all()),
    )


def stock_quantity(typed: Typed, *, material: Material, pointer: str = "") -> Decimal:
    """A quantity of a material in its stock unit, to six places. One SQL statement, none where measures are prefetched.

    pointer: the JSON pointer of the quantity in the body.
    Raises the problem UnitMismatch where the material lacks a figure, BadBody for what cannot be kept.
    """
    try:
        return figures_of(material).in_stock_unit(typed)
    except UnitMismatch as error:
        raise problems.UnitMismatch(
            str(error),
            errors=[{"pointer": pointer, "detail": str(error)}],
            remedies=[{"kind": "give_figure", "text": WORDS_FOR_FIGURES[error.missing], "material": material.pk}],
            missing=error.missing,
            material=material.pk,
            stock_unit=material.stock_unit,
        ) from error
    except QuantityError as error:
        raise bad_field(pointer, str(error)) from error


def measures_of(measures: Iterable[Measure]) -> Measures:
    """Measures by name, as the shop typed them."""
    return {measure.name: typed_of(measure.typed_amount, measure.typed_unit) for measure in measures}


def typed_of(amount: str, unit: str) -> Typed:
    """The quantity that was kept as typed: an amount such as 340, 0.5 or 1/3, and its unit or measure."""
    return Typed(read_quantity(amount, "each").amount, unit)


def amount_as_typed(amount: Fraction) -> str:
    """An exact amount as it is kept beside its unit: a third stays `1/3`.

    >>> amount_as_typed(Fraction(4, 3)), amount_as_typed(Fraction(340))
    ('1 1/3', '340')
    """
    return format_quantity(amount, "g").removesuffix(" g")
