"""What was left of a pour's buckets, as a part of each thing that was in them."""

from collections.abc import Mapping, Sequence
from fractions import Fraction

from inventory.calc.leftovers import share_left, split_off
from inventory.calc.quantities import Typed, UnitMismatch, convert_exactly, format_quantity
from inventory.calc.rounding import half_even
from inventory.calc.units import UNITS, Dimension
from inventory.catalog.models import MaterialKind
from inventory.pours.choosing import Taking
from inventory.pours.entered import Leftover
from inventory.pours.materials import Stuff, lacks_figure
from inventory.pours.problems import LeftoverTooLarge
from inventory.shop.problems import bad_field

POINTER = "/leftover/quantity"
BASE = {Dimension.VOLUME: "ml", Dimension.MASS: "g"}
RESIN_AND_HARDENER = (MaterialKind.RESIN, MaterialKind.HARDENER)


def parts_left(leftover: Leftover, takings: Sequence[Taking], stuff: Mapping[int, Stuff]) -> dict[int, int]:
    """Index of a taking -> what is left of it, in millionths of its stock unit.

    Everything that was stirred into the bucket is left in the same share: what is left over of all that was mixed, by
    weight or by volume as the left-over was said. Resin and hardener must have the density for it; a colour that has
    none counts nothing in the whole and shares like the rest. What was wasted before it was mixed is not in the bucket.
    Raises LeftoverTooLarge, UnitMismatch, BadBody.
    """
    left, base = in_base(leftover.quantity)
    in_bucket = [
        index
        for index, taking in enumerate(takings)
        if stuff[taking.wanted.material].is_mixed
        and not taking.wanted.is_waste
        and (leftover.bucket is None or taking.wanted.bucket == leftover.bucket)
    ]
    mixed = [amount_in(base, takings[index], stuff[takings[index].wanted.material]) for index in in_bucket]
    whole = sum(mixed, Fraction(0))
    if whole == 0:
        raise bad_field("/leftover", "No resin was mixed in that bucket, so none can be left over.")
    try:
        share = share_left(left, mixed)
    except ValueError as error:
        most = format_quantity(half_even(whole / UNITS[leftover.quantity.unit].factor, 2), leftover.quantity.unit)
        raise LeftoverTooLarge(
            f"{leftover.quantity} cannot be left over: only {most} were mixed. Check the left-over and its unit.",
            errors=[{"pointer": POINTER, "detail": f"At most {most} were mixed."}],
            remedies=[{"kind": "change_leftover", "text": f"Give {most} or less.", "field": "leftover"}],
        ) from error
    return {index: split_off(takings[index].quantity, share)[1] for index in in_bucket}


def in_base(quantity: Typed) -> tuple[Fraction, str]:
    """The left-over in mL or g."""
    unit = UNITS.get(quantity.unit)
    base = BASE.get(unit.dimension) if unit else None
    if unit is None or base is None:
        raise bad_field(POINTER, "Give what is left over as a volume or a weight, such as 8 fl oz or 250 g.")
    return quantity.amount * unit.factor, base


def amount_in(base: str, taking: Taking, stuff: Stuff) -> Fraction:
    """What a taking adds to the whole, in mL or g."""
    figures = stuff.figures
    typed = Typed(Fraction(taking.quantity, 1_000_000), figures.stock_unit)
    if base == "ml" and figures.is_powder:
        return Fraction(0)  # it disappears between the drops: a spoonful raises no level
    try:
        return convert_exactly(
            typed,
            to=base,
            density_g_per_ml=figures.density_g_per_ml,
            grams_per_tsp=figures.grams_per_tsp,
            is_powder=figures.is_powder,
        )
    except UnitMismatch as error:
        if stuff.record.kind in RESIN_AND_HARDENER:
            raise lacks_figure(error, stuff, POINTER) from error
        return Fraction(0)
