"""What can be mixed of each resin system in ratio, and which part is stranded."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from inventory.calc.mixing import mixable
from inventory.calc.rounding import half_even
from inventory.catalog.models import ResinPart, StockUnit
from inventory.catalog.queries import resin_systems, shares


@dataclass(frozen=True, slots=True)
class PartOnShelf:
    """A part, what of it is usable, and what of that is left when the other runs out; in its stock unit.

    stranded: None where the figure is missing that would tell.
    """

    role: str
    material: int
    name: str
    unit: str
    usable: Decimal
    stranded: Decimal | None


@dataclass(frozen=True, slots=True)
class MixableSystem:
    """mixable: the most that can be mixed in ratio, in `unit` (ml or g, as the ratio was taken); None where `reason`
    says which figure is missing. runs_out_first: the roles of the parts that end it."""

    system: int
    name: str
    unit: str
    mixable: Decimal | None
    parts: list[PartOnShelf]
    runs_out_first: list[str]
    reason: str | None


def mixable_systems(usable: Mapping[int, Decimal]) -> list[MixableSystem]:
    """Each system that is not archived. usable: by material, in its stock unit. Two SQL statements."""
    return [
        mixable_system(system.pk, system.name, list(system.parts.all()), usable)
        for system in resin_systems().filter(is_archived=False)
    ]


def mixable_system(system: int, name: str, parts: Sequence[ResinPart], usable: Mapping[int, Decimal]) -> MixableSystem:
    """By volume where the ratio is given so, else by mass; stock kept the other way is converted by its density.

    Where a density is missing for the one, the other is tried.
    """
    reason = None
    for unit in (StockUnit.MILLILITRES, StockUnit.GRAMS):
        ratio = shares(parts, "by_volume" if unit is StockUnit.MILLILITRES else "by_mass")
        lacking = [part for part in parts if part.material.stock_unit != unit and _density(part) is None]
        if ratio and not lacking:
            return _in_ratio(system, name, unit, parts, ratio, usable)
        if ratio and reason is None:
            reason = _say_missing(lacking)
    return MixableSystem(
        system=system,
        name=name,
        unit=StockUnit.MILLILITRES,
        mixable=None,
        parts=[_part(part, usable, None) for part in parts],
        runs_out_first=[],
        reason=reason or "The ratio is given by volume for one part and by mass for another: give each part both.",
    )


def _in_ratio(
    system: int,
    name: str,
    unit: StockUnit,
    parts: Sequence[ResinPart],
    ratio: Mapping[str, Decimal],
    usable: Mapping[int, Decimal],
) -> MixableSystem:
    sizes = {part.role: _size(part, unit) for part in parts}
    there = {part.role: Fraction(max(usable.get(part.material_id, Decimal(0)), Decimal(0))) for part in parts}
    found = mixable({role: there[role] * sizes[role] for role in there}, ratio)
    return MixableSystem(
        system=system,
        name=name,
        unit=unit,
        mixable=half_even(found.total),
        parts=[_part(part, usable, found.stranded[part.role] / sizes[part.role]) for part in parts],
        runs_out_first=[role for role, left in found.stranded.items() if not left],
        reason=None,
    )


def _part(part: ResinPart, usable: Mapping[int, Decimal], stranded: Fraction | None) -> PartOnShelf:
    return PartOnShelf(
        role=part.role,
        material=part.material_id,
        name=part.material.name,
        unit=part.material.stock_unit,
        usable=usable.get(part.material_id, Decimal(0)),
        stranded=None if stranded is None else half_even(stranded),
    )


def _size(part: ResinPart, unit: StockUnit) -> Fraction:
    """How much of `unit` one stock unit of the part is."""
    density = _density(part)
    if part.material.stock_unit == unit or density is None:
        return Fraction(1)
    return Fraction(density) if unit is StockUnit.GRAMS else 1 / Fraction(density)


def _density(part: ResinPart) -> Decimal | None:
    return part.material.density_g_per_ml


def _say_missing(parts: Sequence[ResinPart]) -> str:
    names = " and ".join(f"{part.material.name} (part {part.role})" for part in parts)
    return f"The density of {names} is missing: with it the stock can be held against the ratio."
