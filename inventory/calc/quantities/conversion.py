"""From the unit that was said to the unit in which the material is kept."""

from decimal import Decimal
from fractions import Fraction

from inventory.calc.quantities.measures import NO_MEASURES, Measures, worth
from inventory.calc.quantities.typed import MAX_QUANTITY, QuantityError, Typed, UnitMismatch, format_quantity
from inventory.calc.rounding import half_even
from inventory.calc.units import ML_PER_TEASPOON, UNITS, Dimension

VOLUME_AND_MASS = {Dimension.VOLUME, Dimension.MASS}


def convert(
    typed: Typed,
    *,
    to: str,
    density_g_per_ml: Decimal | None = None,
    grams_per_tsp: Decimal | None = None,
    measures: Measures = NO_MEASURES,
    is_powder: bool = False,
) -> Decimal:
    """The quantity in another unit, rounded half-even to six places.

    to: a code of UNITS, or one of the material's measures.
    density_g_per_ml: of a liquid; volume and mass meet in mass = volume × density.
    grams_per_tsp: what a level teaspoon (4.92892159375 mL) of the loose powder weighs; where it is given it is used
    and the density is not, since a powder's mineral density says nothing about a spoonful.
    measures: the material's own, by name.
    is_powder: with it a density never stands in for a missing spoon weight.
    Raises UnitMismatch, which says what figure is missing, and QuantityError where the result is above MAX_QUANTITY, or
    is more than nothing and would round to nothing.
    Source of the teaspoon: NIST Handbook 44, appendix C.

    >>> convert(Typed(Fraction(2), "tsp"), to="g", grams_per_tsp=Decimal("1.7"))
    Decimal('3.400000')
    """
    exact = convert_exactly(
        typed,
        to=to,
        density_g_per_ml=density_g_per_ml,
        grams_per_tsp=grams_per_tsp,
        measures=measures,
        is_powder=is_powder,
    )
    converted = half_even(exact)
    if converted > MAX_QUANTITY:
        most = format_quantity(MAX_QUANTITY, to)
        raise QuantityError(f"{typed} is more than {most}, the most that can be kept at once: split it into several.")
    if exact and not converted:
        raise QuantityError(
            f"{typed} is less than {format_quantity(Decimal('0.000001'), to)}: give more, or leave it out."
        )
    return converted


def convert_exactly(
    typed: Typed,
    *,
    to: str,
    density_g_per_ml: Decimal | None = None,
    grams_per_tsp: Decimal | None = None,
    measures: Measures = NO_MEASURES,
    is_powder: bool = False,
) -> Fraction:
    """As `convert`, before rounding and without bounds: for arithmetic that goes on."""
    said, size = worth(typed.unit, measures)
    wanted, target = worth(to, measures)
    amount = typed.amount * size
    if said is wanted:
        return amount / target
    if {said, wanted} != VOLUME_AND_MASS:
        raise _no_measure(typed, said, to)
    grams_per_ml = _grams_per_ml(typed, to, density_g_per_ml, grams_per_tsp, is_powder)
    return (amount * grams_per_ml if wanted is Dimension.MASS else amount / grams_per_ml) / target


def weighed(before: Typed, after: Typed) -> Typed:
    """What was used of a container that stood on the scale twice: before − after, in the unit of `before`.

    The container's own weight is in both and drops out. Rough where either weight is.
    Raises QuantityError unless both are weights and the second is the smaller.
    """
    for weight in (before, after):
        if weight.unit not in UNITS or UNITS[weight.unit].dimension is not Dimension.MASS:
            raise QuantityError(f"{weight} is not a weight: give both weighings in g, kg, oz or lb.")
    used = before.amount - convert_exactly(after, to=before.unit)
    if used <= 0:
        raise QuantityError(
            f"Weighed {before} before and {after} after, nothing was used: check both weighings and their order."
        )
    return Typed(used, before.unit, before.is_rough or after.is_rough)


def _grams_per_ml(
    typed: Typed, to: str, density_g_per_ml: Decimal | None, grams_per_tsp: Decimal | None, is_powder: bool
) -> Fraction:
    if grams_per_tsp is not None:
        return _above_zero(grams_per_tsp, "grams_per_tsp") / ML_PER_TEASPOON
    if is_powder:
        raise UnitMismatch(
            f"{typed} cannot be brought to {to}: weigh a level teaspoon of the loose powder and give the material its"
            " grams per teaspoon, or give the quantity in the unit in which it is kept.",
            missing="grams_per_tsp",
        )
    if density_g_per_ml is None:
        raise UnitMismatch(
            f"{typed} cannot be brought to {to}: give the material its density in g per mL from the data sheet, or give"
            " the quantity in the unit in which it is kept.",
            missing="density_g_per_ml",
        )
    return _above_zero(density_g_per_ml, "density_g_per_ml")


def _above_zero(figure: Decimal, name: str) -> Fraction:
    if not figure.is_finite() or figure <= 0:
        raise ValueError(f"{name} must be above zero, not {figure}")
    return Fraction(figure)


def _no_measure(typed: Typed, said: Dimension, to: str) -> UnitMismatch:
    kind = {Dimension.COUNT: "a count", Dimension.AREA: "an area"}.get(said, f"a {said}")
    return UnitMismatch(
        f"{typed} is {kind} and does not convert to {to} by itself: give the quantity in {to}, or add a measure to the"
        f" material that says what one equals, such as 1 roll = 180 ft or 1 can = 340 g.",
        missing="measure",
    )
