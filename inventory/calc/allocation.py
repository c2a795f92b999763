"""From which lots a pour takes its material.

Quantities are whole millionths of the material's stock unit, as the ledger keeps them.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta

# What is asked and what is there count as the same within 0.001 of a stock unit: 128 fl oz empty a gallon.
TOLERANCE = 1_000


@dataclass(frozen=True, slots=True)
class Candidate:
    """A lot that may be taken from: usable on the day of the pour, at the place of the pour.

    takeable: the most that may leave it; for a backdated pour the lowest balance from that moment to now.
    use_by: the last good day; None where the lot does not age.
    is_open: a container already opened.
    is_used_by_job: the job has poured from it before.
    """

    lot: int
    takeable: int
    use_by: date | None
    received_on: date
    is_open: bool
    is_used_by_job: bool = False


@dataclass(frozen=True, slots=True)
class Pick:
    """So much from this lot; quantity > 0."""

    lot: int
    quantity: int


@dataclass(frozen=True, slots=True)
class Choice:
    """The picks in the order in which the lots are taken from, and what no lot could give (0 when all is found)."""

    picks: tuple[Pick, ...]
    missing: int


def choose_lots(
    candidates: Iterable[Candidate],
    *,
    wanted: int,
    keeps_to_one_lot: bool = False,
    whole_job_needs: int | None = None,
) -> Choice:
    """Choose the lots for one material of a pour; the same answer whatever order the candidates come in.

    The earliest use-by goes first, an open container before a full one, then the lot received first; lots without a
    use-by come after those that have one. Where the job should see one lot (colour match), a lot that the job already
    used goes before all others, and after that one that can serve the whole job. The last pick may differ by up to
    0.001 of a stock unit from what is asked, so that nothing unweighable is left over or looked for elsewhere.

    wanted: millionths of the stock unit, > 0.
    whole_job_needs: what the job still takes of this material, this pour included; None: only this pour is known.
    Raises ValueError for a quantity that is not above 0 and for a lot given twice.
    """
    if wanted <= 0:
        raise ValueError(f"a pour takes more than 0 of a material, not {wanted}")
    shelf = list(candidates)
    if len({candidate.lot for candidate in shelf}) < len(shelf):
        raise ValueError("each lot may stand only once among the candidates of a place")
    if keeps_to_one_lot:
        needs = max(wanted, whole_job_needs or 0)
        shelf.sort(key=lambda candidate: (*_one_lot_order(candidate, needs), *_use_by_order(candidate)))
    else:
        shelf.sort(key=_use_by_order)
    return _take_in_turn(shelf, wanted)


def taken_from(there: int, *, wanted: int) -> int:
    """What an issue takes of a lot: what is asked, or exactly what is there where that is all but the same.

    Where what is asked exceeds what is there, or would leave less, by at most 0.001 of a stock unit, the issue takes
    what is there. Where more is asked than that, it takes all there is and the rest is short.

    there, wanted: millionths of the stock unit, both >= 0.

    >>> taken_from(3_785_411_784, wanted=128 * 29_573_530)  # 128 fl oz, each rounded up, empty a gallon
    3785411784
    """
    return there if wanted >= there - TOLERANCE else wanted


def is_enough(there: int, *, wanted: int) -> bool:
    """Whether a lot can give what is asked, within 0.001 of a stock unit."""
    return wanted <= there + TOLERANCE


def use_by(*, expires_on: date | None, opened_on: date | None, open_life_days: int | None) -> date | None:
    """The last good day of a lot: the earlier of its expiry and the end of its opened life; None if it has neither.

    open_life_days: how long the material keeps once opened, >= 0; None: as long as unopened.
    """
    if opened_on is None or open_life_days is None:
        return expires_on
    open_until = days_after(opened_on, open_life_days)
    return open_until if expires_on is None else min(expires_on, open_until)


def days_after(day: date, days: int) -> date:
    """That many days later (a shelf life after the day of making); at most the last day a calendar can write."""
    if days > (date.max - day).days:
        return date.max
    return day + timedelta(days=days)


def is_usable_on(use_by: date | None, day: date) -> bool:
    """Whether a lot is still good on that day of the shop: its use-by is its last good day."""
    return use_by is None or day <= use_by


def _one_lot_order(candidate: Candidate, needs: int) -> tuple[bool, bool]:
    return (not candidate.is_used_by_job, not is_enough(candidate.takeable, wanted=needs))


def _use_by_order(candidate: Candidate) -> tuple[bool, date, bool, date, int]:
    return (
        candidate.use_by is None,
        candidate.use_by or date.max,
        not candidate.is_open,
        candidate.received_on,
        candidate.lot,
    )


def _take_in_turn(shelf: list[Candidate], wanted: int) -> Choice:
    picks: list[Pick] = []
    missing = wanted
    for candidate in shelf:
        if candidate.takeable <= 0:
            continue
        taken = taken_from(candidate.takeable, wanted=missing)
        picks.append(Pick(candidate.lot, taken))
        if is_enough(candidate.takeable, wanted=missing):
            return Choice(tuple(picks), missing=0)
        missing -= taken
    return Choice(tuple(picks), missing)
