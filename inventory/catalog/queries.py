"""What is read of the catalogue: whole records in a constant number of SQL statements."""

from collections.abc import Iterable, Sequence
from decimal import Decimal
from fractions import Fraction

from django.db.models import Prefetch, QuerySet

from inventory.calc.mixing import per_hundred, ratio_by_mass
from inventory.calc.rounding import half_even
from inventory.calc.units import UNITS, Unit
from inventory.catalog.models import Material, Pack, PackContent, ResinPart, ResinSystem, Supplier

USUAL_TOLERANCE_PERCENT = Decimal(1)
"""How far two ratios of one data sheet may lie apart before somebody should look: sheets print them rounded."""


def units() -> Sequence[Unit]:
    """Every unit in which quantities are said."""
    return list(UNITS.values())


def suppliers() -> QuerySet[Supplier]:
    return Supplier.objects.all()


def materials() -> QuerySet[Material]:
    """Materials with their measures and main supplier. Two SQL statements."""
    return Material.objects.select_related("main_supplier").prefetch_related("measures")


def packs() -> QuerySet[Pack]:
    """Packs with their supplier, contents and the contents' materials. Two SQL statements."""
    contents = PackContent.objects.select_related("material")
    return Pack.objects.select_related("supplier").prefetch_related(Prefetch("contents", contents))


def resin_systems() -> QuerySet[ResinSystem]:
    """Resin systems with their parts and the parts' materials. Two SQL statements."""
    parts = ResinPart.objects.select_related("material").order_by("role")
    return ResinSystem.objects.prefetch_related(Prefetch("parts", parts))


def ratio_warnings(system: ResinSystem) -> list[str]:
    """Where the ratio by volume and the ratio by mass disagree through the densities by more than the tolerance.

    Nothing is said where there is one ratio only, or a density is missing. The first part counts as 100; the tolerance
    is the system's own, 1 % where it has none.
    """
    parts = list(system.parts.all())
    volumes, masses = shares(parts, "by_volume"), shares(parts, "by_mass")
    densities = {part.role: part.material.density_g_per_ml for part in parts}
    known = {role: density for role, density in densities.items() if density is not None}
    if not volumes or not masses or len(known) < len(parts):
        return []
    first = parts[0].role
    through = per_hundred(ratio_by_mass(volumes, known), of=first)
    given = per_hundred(masses, of=first)
    tolerance = system.tolerance_percent if system.tolerance_percent is not None else USUAL_TOLERANCE_PERCENT
    return [
        f"By volume and density part {role} weighs {half_even(through[role], 2)} per 100 of {first}; the ratio by mass"
        f" says {half_even(given[role], 2)}. Check both ratios and the densities on the data sheet."
        for role in given
        if abs(through[role] / given[role] - 1) * 100 > Fraction(tolerance)
    ]


def shares(parts: Iterable[ResinPart], ratio: str) -> dict[str, Decimal]:
    """The ratio by role; empty unless every part has its share."""
    found = {part.role: getattr(part, ratio) for part in parts}
    return {} if None in found.values() else found
