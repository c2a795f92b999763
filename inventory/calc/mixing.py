"""Parts of a resin system in ratio, by volume and by mass.

A ratio is a mapping from the part's role ("A", "B", …) to its share, in any scale: 2:1, 100:50. Volumes are taken to
add up, as makers' sheets do. Results are exact fractions, to be rounded where they are shown.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

Number = int | Decimal | Fraction


@dataclass(frozen=True, slots=True)
class Mixable:
    """What can be mixed in ratio, what of each part goes into it, and what of each part is left stranded (0 for the
    part that runs out first); all in the unit of the parts given."""

    total: Fraction
    used: dict[str, Fraction]
    stranded: dict[str, Fraction]


def mixable(on_hand: Mapping[str, Number], ratio: Mapping[str, Number]) -> Mixable:
    """The most that can be mixed in ratio from what there is of each part.

    on_hand: by role, >= 0, all in one unit: of volume where the ratio is by volume, of mass where it is by mass.
    ratio: by role, > 0; every role of the system. A role without stock counts as 0.
    Raises ValueError for a ratio that is not above 0, stock below 0, and stock of a role that the system does not have.

    >>> mixable({"A": 2000, "B": 700}, {"A": 2, "B": 1}).stranded["A"]
    Fraction(600, 1)
    """
    shares = _positive(ratio, "share of the ratio")
    strangers = sorted(on_hand.keys() - shares.keys())
    if strangers:
        raise ValueError(f"the ratio has no part {', '.join(strangers)}; its parts are {', '.join(shares)}")
    there = {role: Fraction(on_hand.get(role, 0)) for role in shares}
    if any(quantity < 0 for quantity in there.values()):
        raise ValueError("what is on hand of a part cannot be below 0")
    rounds = min(there[role] / share for role, share in shares.items())
    used = {role: rounds * share for role, share in shares.items()}
    return Mixable(
        total=sum(used.values(), Fraction(0)),
        used=used,
        stranded={role: there[role] - used[role] for role in shares},
    )


def ratio_by_mass(ratio_by_volume: Mapping[str, Number], densities: Mapping[str, Number]) -> dict[str, Fraction]:
    """The same ratio by mass: each share times the part's density (g/mL, any one unit).

    Raises ValueError where a share or density is missing or not above 0.
    """
    shares, weights = _positive(ratio_by_volume, "share of the ratio"), _densities(ratio_by_volume, densities)
    return {role: share * weights[role] for role, share in shares.items()}


def ratio_by_volume(ratio_by_mass: Mapping[str, Number], densities: Mapping[str, Number]) -> dict[str, Fraction]:
    """The same ratio by volume: each share divided by the part's density (g/mL, any one unit).

    Raises ValueError where a share or density is missing or not above 0.
    """
    shares, weights = _positive(ratio_by_mass, "share of the ratio"), _densities(ratio_by_mass, densities)
    return {role: share / weights[role] for role, share in shares.items()}


def per_hundred(ratio: Mapping[str, Number], *, of: str) -> dict[str, Fraction]:
    """The ratio as sheets print it: parts of each role per 100 parts of the role `of`.

    Raises ValueError for a role that the ratio does not have and for shares that are not above 0.
    """
    shares = _positive(ratio, "share of the ratio")
    if of not in shares:
        raise ValueError(f"the ratio has no part {of}; its parts are {', '.join(shares)}")
    return {role: 100 * share / shares[of] for role, share in shares.items()}


def mixed_density(ratio_by_volume: Mapping[str, Number], densities: Mapping[str, Number]) -> Fraction:
    """Density of the mixed resin, in the unit of the parts' densities: mass of the shares over their volume.

    Raises ValueError where a share or density is missing or not above 0.
    """
    masses = ratio_by_mass(ratio_by_volume, densities)
    volumes = _positive(ratio_by_volume, "share of the ratio")
    return sum(masses.values(), Fraction(0)) / sum(volumes.values(), Fraction(0))


def _densities(ratio: Mapping[str, Number], densities: Mapping[str, Number]) -> dict[str, Fraction]:
    lacking = sorted(ratio.keys() - densities.keys())
    if lacking:
        raise ValueError(f"the density of part {', '.join(lacking)} is missing; volume and mass convert through it")
    return _positive({role: densities[role] for role in ratio}, "density")


def _positive(numbers: Mapping[str, Number], what: str) -> dict[str, Fraction]:
    if not numbers or any(number <= 0 for number in numbers.values()):
        raise ValueError(f"every part needs a {what} above 0")
    return {role: Fraction(number) for role, number in numbers.items()}
