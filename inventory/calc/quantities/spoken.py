"""Reading what people and programs say: `1 1/2 cups`, `2 pumps`, `~1/3 left`, {"amount": "32", "unit": "fl_oz"}."""

import re
import unicodedata
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from inventory.calc.quantities.measures import NO_MEASURES, Measures, find_measure, folded, no_such_unit
from inventory.calc.quantities.typed import AmbiguousUnit, QuantityError, Typed, quoted
from inventory.calc.rounding import half_even
from inventory.calc.units import AMBIGUOUS, SPOKEN, UNITS

LONGEST_TEXT = 100
MOST_PLACES = 20
AN_EXAMPLE = "such as 32 fl oz, 1 1/2 cups or 14 g"

_ROUGH = re.compile(r"\s*(?:[~≈∼]|(?:about|approx\.?|approximately|roughly|ca\.)\s)\s*", re.IGNORECASE)
_FRACTION_SIGNS = "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"
_AMOUNT = re.compile(rf"[-−+]?[0-9.,/⁄{_FRACTION_SIGNS}\s-]*")
_WHOLE = r"[0-9]{1,3}(?:,[0-9]{3}){1,3}|[0-9]{1,20}"
_DECIMAL = re.compile(rf"(?P<whole>{_WHOLE})?(?:\.(?P<places>[0-9]{{0,{MOST_PLACES}}}))?")
_FRACTION = re.compile(rf"(?:(?P<whole>{_WHOLE})(?:\s+|-))?(?P<over>[0-9]{{1,9}})\s*/\s*(?P<under>[0-9]{{1,6}})")
_EXPONENT = re.compile(r"\s*[e^][-−+]?[0-9]", re.IGNORECASE)
_NO_NUMBER = re.compile(r"\s*[-+]?(?:s?nan|inf(?:inity)?|∞)(?!\w)", re.IGNORECASE)
_SHARE = re.compile(r"(?P<share>.*?)(?P<percent>%)?\s*(?:\bleft)?\s*", re.IGNORECASE | re.DOTALL)
_SHARE_WORDS = {
    "full": Fraction(1),
    "three quarters": Fraction(3, 4),
    "two thirds": Fraction(2, 3),
    "half": Fraction(1, 2),
    "a half": Fraction(1, 2),
    "a third": Fraction(1, 3),
    "one third": Fraction(1, 3),
    "a quarter": Fraction(1, 4),
    "one quarter": Fraction(1, 4),
    "empty": Fraction(0),
    "nothing": Fraction(0),
}


@dataclass(frozen=True)
class ShareLeft:
    """How much of what was there is left: 0 to 1, exact; rough where it was judged by eye."""

    share: Fraction
    is_rough: bool = False

    def of(self, there: Decimal) -> Decimal:
        """What is left of an amount, in its unit, to six places, half to even."""
        return half_even(Fraction(there) * self.share)


def parse_quantity(text: str, *, measures: Measures = NO_MEASURES) -> Typed:
    """Read a quantity that a person typed.

    text: an amount (`32`, `1,250.5`, `1/4`, `1 1/2`, `1½`), then a unit or one of the material's measures, singular or
    plural, in any case; a leading `~` or `about` marks it as rough.
    measures: the material's own, by name.
    Raises AmbiguousUnit for a bare `oz`, UnitMismatch for a unit that is not known, QuantityError for anything else
    that cannot be read, a share of what is left among them.

    >>> str(parse_quantity("1½ Cups"))
    '1.5 cups'
    """
    body, is_rough = _without_rough(_checked(text))
    number, unit = _split(body, text)
    amount = _amount(number, text)
    words = folded(unit)
    if words == "left" or words.endswith(" left"):
        raise QuantityError(
            f"{quoted(text)} is a share of what is there, not an amount: say how much it is, {AN_EXAMPLE}, or set the"
            " level of the vessel instead."
        )
    return Typed(amount, _unit(unit, words, text, measures), is_rough)


def read_quantity(amount: object, unit: object, *, measures: Measures = NO_MEASURES) -> Typed:
    """Read a quantity that came in two parts, `{"amount": "32", "unit": "fl_oz"}`.

    amount: a number, or text of the kinds that `parse_quantity` reads.
    unit: a code of UNITS (`oz` is the weight here), another way of writing one, or a measure's name.
    Raises as `parse_quantity` does.
    """
    if not isinstance(unit, str) or not unit.strip():
        raise QuantityError("A quantity needs its unit, such as fl_oz, ml, g or each.")
    if len(unit) > LONGEST_TEXT:
        raise QuantityError(f"{quoted(unit)} is too long for a unit.")
    if unit in UNITS:
        return Typed(_given(amount), unit)
    return Typed(_given(amount), _unit(unit, folded(unit), unit, measures))


def parse_share_left(text: str) -> ShareLeft:
    """Read how much of a vessel is left: `~1/3 left`, `1/4`, `40 %`, `about a third left`, `empty`.

    Raises QuantityError for what is no share, or one above the whole.
    """
    body, is_rough = _without_rough(_checked(text))
    match = _SHARE.fullmatch(body)
    said = match["share"].strip() if match else ""
    share = _SHARE_WORDS.get(folded(said))
    if share is None:
        if not said or not _AMOUNT.fullmatch(said):
            raise QuantityError(
                f"{quoted(text)} is no share of what is there: write one such as 1/3 left or 40 % left."
            )
        share = _amount(said, text) / (100 if match and match["percent"] else 1)
    if share > 1:
        raise QuantityError(f"{quoted(text)} is more than the whole: a share left is between 0 and 1.")
    return ShareLeft(share, is_rough)


def _checked(text: str) -> str:
    if not isinstance(text, str):
        raise QuantityError(f"Write the quantity as text, {AN_EXAMPLE}.")
    if not text.strip():
        raise QuantityError(f"The quantity is empty: write an amount and a unit, {AN_EXAMPLE}.")
    if len(text) > LONGEST_TEXT:
        raise QuantityError(f"{quoted(text)} is too long for a quantity: write an amount and a unit, {AN_EXAMPLE}.")
    return text


def _without_rough(text: str) -> tuple[str, bool]:
    mark = _ROUGH.match(text)
    return (text[mark.end() :], True) if mark else (text, False)


def _split(body: str, text: str) -> tuple[str, str]:
    """The amount and the unit of a text, each as written."""
    if _NO_NUMBER.match(body):
        raise QuantityError(f"{quoted(text)} is not a number: write an amount, {AN_EXAMPLE}.")
    match = _AMOUNT.match(body)
    number, unit = (match[0], body[match.end() :]) if match else ("", body)
    if not number.strip(" -"):
        raise QuantityError(f"{quoted(text)} does not begin with an amount: write it first, {AN_EXAMPLE}.")
    if _EXPONENT.match(unit):
        raise QuantityError(f"{quoted(text)} has an exponent: write the number out, {AN_EXAMPLE}.")
    if not unit.strip():
        raise QuantityError(f"{quoted(text)} has no unit: write it behind the amount, {AN_EXAMPLE}.")
    return number, unit


def _amount(number: str, text: str) -> Fraction:
    """The exact amount that digits stand for; `text` is what the message quotes."""
    digits = _spelled_out(number).strip().rstrip("-").strip()
    if digits.startswith(("-", "−")):
        raise QuantityError(f"{quoted(text)} is below zero: give how much it is, without the sign.")
    fraction = _FRACTION.fullmatch(digits)
    if fraction:
        if int(fraction["under"]) == 0:
            raise QuantityError(f"{quoted(text)} divides by zero: write the fraction as in 1/4.")
        return _whole(fraction["whole"]) + Fraction(int(fraction["over"]), int(fraction["under"]))
    decimal = _DECIMAL.fullmatch(digits)
    if decimal and (decimal["whole"] or decimal["places"]):
        places = decimal["places"] or ""
        return _whole(decimal["whole"]) + Fraction(int(places or 0), 10 ** len(places))
    raise QuantityError(
        f"The number in {quoted(text)} cannot be read: write it as 1250, 0.5, 1/4 or 1 1/2, with a point before the"
        " decimals."
    )


def _spelled_out(number: str) -> str:
    """The number with its one-letter fractions written out, each set apart from the whole number before it."""
    spaced = "".join(f" {sign} " if sign in _FRACTION_SIGNS else sign for sign in number)
    return unicodedata.normalize("NFKC", spaced).replace("⁄", "/")


def _whole(digits: str | None) -> int:
    return int(digits.replace(",", "")) if digits else 0


def _unit(unit: str, words: str, text: str, measures: Measures) -> str:
    """The code or measure's name that words stand for."""
    own = find_measure(unit.strip(), measures)
    if own is not None:
        return own
    if words in AMBIGUOUS:
        raise AmbiguousUnit(
            f"{quoted(text)} may be a volume or a weight: write fl oz for fluid ounces or oz by weight for ounces on a"
            " scale (units fl_oz and oz).",
            choices=AMBIGUOUS[words],
        )
    if words in SPOKEN:
        return SPOKEN[words]
    if words.startswith("%"):
        raise QuantityError(f"{quoted(text)} is a percentage, not an amount: say how much it is, {AN_EXAMPLE}.")
    raise no_such_unit(unit.strip(), measures)


def _given(amount: object) -> Fraction:
    """The exact amount of a number or text that a program sent."""
    if isinstance(amount, str):
        body = _checked(amount)
        if not _AMOUNT.fullmatch(body):
            raise QuantityError(f"The amount {quoted(body)} cannot be read: write digits, as in 1250, 0.5 or 1 1/2.")
        return _amount(body, body)
    if isinstance(amount, bool) or not isinstance(amount, int | float | Decimal | Fraction):
        raise QuantityError('An amount is a number, or text such as "32" or "1 1/2".')
    if isinstance(amount, int | Fraction):
        return Fraction(amount)
    number = Decimal(repr(amount)) if isinstance(amount, float) else amount
    if not number.is_finite():
        raise QuantityError("An amount must be a number that ends; this one is not a number or has no end.")
    is_out_of_reach = number != 0 and not -MOST_PLACES <= number.adjusted() < MOST_PLACES
    if is_out_of_reach or len(number.as_tuple().digits) > 2 * MOST_PLACES:
        raise QuantityError(f"The amount is too large, too small or too finely given: at most {MOST_PLACES} places.")
    return Fraction(number)
