"""A material's own measures: `1 pump = 30 ml`, `1 scoop = 4 g`, `1 can = 340 g`."""

import re
import unicodedata
from collections.abc import Mapping
from fractions import Fraction

from inventory.calc.quantities.typed import QuantityError, Typed, UnitMismatch, plural, quoted
from inventory.calc.units import AMBIGUOUS, SPOKEN, UNITS, Dimension

Measures = Mapping[str, Typed]
"""From a measure's name to what one of it equals, in a unit of UNITS."""

NO_MEASURES: Measures = {}
LONGEST_NAME = 40
_TAKEN = {*SPOKEN, *AMBIGUOUS, "left", "full", "empty"}
# e5 behind an amount would read as an exponent.
_NAME = re.compile(r"(?![eE][0-9-])[^\W_](?:(?:[^\W_]|[ ()-])*(?:[^\W_]|\)))?")


def check_measure(name: str, equals: Typed) -> None:
    """Raise QuantityError unless a material may have this measure.

    A name begins with a letter, has at most 40 letters, digits, spaces, hyphens or brackets, and is no unit. What one
    of it equals is more than nothing, and is given in a unit, never in another measure.
    """
    is_clear = _NAME.fullmatch(name) is not None and name[0].isalpha() and name == " ".join(name.split())
    if len(name) > LONGEST_NAME or not is_clear:
        raise QuantityError(
            f"{quoted(name)} cannot name a measure: use up to {LONGEST_NAME} letters, digits, single spaces, hyphens or"
            " brackets, a letter first, such as pump or small scoop."
        )
    words = folded(name)
    if _TAKEN & {*_forms(name), words.removesuffix("s")}:
        raise QuantityError(f"{quoted(name)} already has a meaning of its own; give the measure another name.")
    if words.endswith(" left"):
        raise QuantityError(f"{quoted(name)} would read as what is left; give the measure another name.")
    if equals.unit not in UNITS:
        raise QuantityError(
            f"A {name} must equal an amount in a unit such as ml, g or ft; {quoted(equals.unit)} is not a unit."
        )
    if equals.amount == 0:
        raise QuantityError(f"A {name} must equal more than nothing.")


def check_measures(measures: Measures) -> None:
    """Raise QuantityError unless a material may have all of these: each good by itself, no two read alike."""
    seen: dict[str, str] = {}
    for name, equals in measures.items():
        check_measure(name, equals)
        for form in _forms(name):
            if form in seen:
                raise QuantityError(
                    f"The measures {quoted(seen[form])} and {quoted(name)} read alike; rename one of them."
                )
        seen |= dict.fromkeys(_forms(name), name)


def folded(words: str) -> str:
    """Words as they are compared: case, full stops, underscores and spare spaces make no difference."""
    return " ".join(unicodedata.normalize("NFC", words).casefold().replace(".", " ").replace("_", " ").split())


def find_measure(words: str, measures: Measures) -> str | None:
    """The name of the measure that these words mean, singular or plural; None where there is none."""
    if words in measures:
        return words
    wanted = folded(words)
    return next((name for name in measures if wanted in _forms(name)), None)


def worth(unit: str, measures: Measures) -> tuple[Dimension, Fraction]:
    """What one of a unit or measure is, in the base unit of its dimension.

    Raises UnitMismatch (missing a measure) for what is neither, QuantityError for a measure of a measure.
    """
    if unit in UNITS:
        return UNITS[unit].dimension, UNITS[unit].factor
    if unit not in measures:
        raise no_such_unit(unit, measures)
    check_measure(unit, measures[unit])
    equals = measures[unit]
    base = UNITS[equals.unit]
    return base.dimension, equals.amount * base.factor


def no_such_unit(words: str, measures: Measures) -> UnitMismatch:
    """The error for a unit that nobody has defined."""
    own = (
        f"one of the material's measures ({', '.join(list(measures)[:12])})"
        if measures
        else "a measure of the material"
    )
    return UnitMismatch(
        f"{quoted(words)} is neither a unit nor a measure of this material: use a unit such as fl oz, ml, gal, g, lb,"
        f" ft or each, or {own}, or add it to the material's measures.",
        missing="measure",
    )


def _forms(name: str) -> set[str]:
    return {folded(name), folded(plural(name))}
