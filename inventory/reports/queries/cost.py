"""Cost per square foot: what the coats on finished tops cost in materials, over the finished area."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from urllib.parse import urlencode

from inventory.calc.job_cost import cost_per_area
from inventory.calc.rounding import half_even
from inventory.catalog.models import MaterialKind
from inventory.reports.queries.cost_sums import (
    KINDS,
    GroupBy,
    Question,
    RestsOn,
    Slot,
    State,
    Tops,
    costs,
    tops,
)
from inventory.shop.fields import to_decimal

MATERIALS_ONLY = "materials only"
FREE_GOODS = "contains free goods"
PROVISIONAL = "provisional"
UNFINISHED_MONTH = "unfinished"
LARGEST_ID = 2**52
"""Beyond it a group's number, packed with what went into it, would not fit the database's whole numbers."""
NOTHING_ODD = RestsOn(0)
NOT_FINISHED = "so far: not finished yet"


@dataclass(frozen=True, slots=True)
class Link:
    """The record that a row is about: its noun and id."""

    noun: str
    id: int


@dataclass(frozen=True, slots=True)
class CostRow:
    """A group of tops and what their coats cost.

    area_sqft: of the tops, each once, without scrapped ones. cost: materials, waste inside, redone coats not.
    cost_per_sqft: cost over area; where there is none, `reason` says why. by_kind, waste_by_kind: by kind of material.
    movements: where the lines are that sum to cost and redo_cost.
    """

    key: str
    label: str
    state: State
    area_sqft: Decimal
    tops: int
    scrapped: int
    cost: Decimal | None
    cost_per_sqft: Decimal | None
    by_kind: dict[str, Decimal]
    waste_cost: Decimal | None
    waste_by_kind: dict[str, Decimal]
    redo_cost: Decimal
    notes: list[str]
    reason: str | None
    link: Link | None = None
    movements: str | None = None


@dataclass(frozen=True, slots=True)
class CostReport:
    """rows: finished tops before unfinished ones.

    total: of all rows; where both states are asked for, of the finished ones. unfinished_total: then of the others.
    """

    question: Question
    rows: list[CostRow]
    total: CostRow
    unfinished_total: CostRow | None


@dataclass(slots=True)
class Sums:
    """Whole numbers of one row, added up from the groups in it."""

    area: int = 0
    tops: int = 0
    scrapped: int = 0
    poured: int = 0
    unpoured: int = 0
    cost: dict[MaterialKind, int] = field(default_factory=dict)
    waste: dict[MaterialKind, int] = field(default_factory=dict)
    redo: int = 0
    rests_on: RestsOn = NOTHING_ODD

    def add_tops(self, group: Tops) -> None:
        self.area += group.area
        self.tops += group.pieces
        self.scrapped += group.scrapped
        self.poured += group.poured
        self.unpoured += group.unpoured

    def add_cost(self, amounts: Mapping[Slot, int]) -> None:
        for slot, value in amounts.items():
            self.rests_on |= slot.rests_on
            if slot.is_redo:
                self.redo += value
                continue
            self.cost[slot.kind] = self.cost.get(slot.kind, 0) + value
            if slot.is_waste:
                self.waste[slot.kind] = self.waste.get(slot.kind, 0) + value


def cost_per_sqft(question: Question) -> CostReport:
    """What tops cost per square foot. Three SQL statements at most, however many pours."""
    groups, amounts = tops(question), costs(question)
    if question.group_by is GroupBy.MATERIAL_KIND:
        rows = list(_rows_by_kind(question, groups, amounts))
    else:
        rows = [_row_of_group(question, group, amounts.get(group.group, {})) for group in groups]
    rows.sort(key=lambda row: row.state is State.UNFINISHED)
    finished, unfinished = (_total(state, groups, amounts) for state in (State.FINISHED, State.UNFINISHED))
    match question.state:
        case State.ALL:
            return CostReport(question, rows, finished, unfinished)
        case State.UNFINISHED:
            return CostReport(question, rows, unfinished, None)
        case _:
            return CostReport(question, rows, finished, None)


def _row_of_group(
    question: Question,
    group: Tops,
    amounts: Mapping[Slot, int],
) -> CostRow:
    sums = Sums()
    sums.add_tops(group)
    sums.add_cost(amounts)
    state, key = state_of(group.group), key_of(question.group_by, group.group)
    label, noun = _name(question.group_by, group)
    link = Link(noun, group.group // 2) if noun else None
    return _row(sums, state, key=key, label=label, link=link, movements=movements_url(question, key, state))


def _rows_by_kind(
    question: Question,
    groups: Sequence[Tops],
    amounts: Mapping[int, Mapping[Slot, int]],
) -> Iterator[CostRow]:
    """A row for each kind of material that went in; every one stands over the area of all tops."""
    for group in groups:
        for kind in KINDS:
            of_kind = {slot: value for slot, value in amounts.get(group.group, {}).items() if slot.kind is kind}
            if not of_kind:
                continue
            sums = Sums()
            sums.add_tops(group)
            sums.add_cost(of_kind)
            state = state_of(group.group)
            url = movements_url(question, kind.value, state)
            yield _row(sums, state, key=kind.value, label=kind.label, movements=url)


def _total(
    state: State,
    groups: Sequence[Tops],
    amounts: Mapping[int, Mapping[Slot, int]],
) -> CostRow:
    sums = Sums()
    for group in groups:
        if state_of(group.group) is not state:
            continue
        sums.add_tops(group)
        sums.add_cost(amounts.get(group.group, {}))
    return _row(sums, state, key="total", label="In all")


def _row(
    sums: Sums, state: State, *, key: str, label: str, link: Link | None = None, movements: str | None = None
) -> CostRow:
    reason, is_costed = _why_no_figure(sums), sums.poured > 0
    cost, waste = sum(sums.cost.values()), sum(sums.waste.values())
    exact = None if reason else cost_per_area(cost, sums.area)
    return CostRow(
        key=key,
        label=label,
        state=state,
        area_sqft=to_decimal(sums.area, 6),
        tops=sums.tops,
        scrapped=sums.scrapped,
        cost=to_decimal(cost, 4) if is_costed else None,
        cost_per_sqft=None if exact is None else half_even(exact, 4),
        by_kind=_by_kind(sums.cost),
        waste_cost=to_decimal(waste, 4) if is_costed else None,
        waste_by_kind=_by_kind(sums.waste),
        redo_cost=to_decimal(sums.redo, 4),
        notes=list(_notes(sums, state)),
        reason=reason,
        link=link,
        movements=movements,
    )


def _why_no_figure(sums: Sums) -> str | None:
    if not sums.tops:
        return "There are no tops, so there is no area."
    if sums.tops == sums.scrapped:
        return "Every top was scrapped, so there is no finished area."
    if not sums.area:
        return "The tops have no area yet: measure them first."
    if not sums.poured:
        return "No completed pour is recorded on these tops."
    return None


def _notes(sums: Sums, state: State) -> Iterator[str]:
    yield MATERIALS_ONLY
    if RestsOn.FREE_GOODS in sums.rests_on:
        yield FREE_GOODS
    if RestsOn.PROVISIONAL_PRICES in sums.rests_on:
        yield PROVISIONAL
    if state is State.UNFINISHED and sums.tops:
        yield NOT_FINISHED
    if sums.unpoured and sums.poured:
        are = "top has" if sums.unpoured == 1 else "tops have"
        yield f"{sums.unpoured} {are} no completed pour on record; the area counts all the same"


def _by_kind(amounts: Mapping[MaterialKind, int]) -> dict[str, Decimal]:
    return {kind.value: to_decimal(amounts[kind], 4) for kind in KINDS if amounts.get(kind)}


def _name(group_by: GroupBy, group: Tops) -> tuple[str, str | None]:
    """A group in words, and the noun that it is, if any."""
    match group_by:
        case GroupBy.JOB:
            return f"Job {group.first_job_number}: {group.first_title}", "job"
        case GroupBy.PIECE:
            return f"Top {group.first_piece_number}: {group.first_piece_name} (job {group.first_job_number})", "piece"
        case GroupBy.CUSTOMER:
            return group.first_customer_name, "customer"
        case _:
            months = group.group // 2
            return f"{date(months // 12, months % 12 + 1, 1):%B %Y}" if months else "Not finished yet", None


def state_of(group: int) -> State:
    return State.UNFINISHED if group % 2 else State.FINISHED


def key_of(group_by: GroupBy, group: int) -> str:
    """The key of a group: the id of its record, or the month.

    >>> key_of(GroupBy.MONTH, (2026 * 12 + 4) * 2), key_of(GroupBy.JOB, 15)
    ('2026-05', '7')
    """
    base = group // 2
    if group_by is not GroupBy.MONTH:
        return str(base)
    return f"{base // 12:04d}-{base % 12 + 1:02d}" if base else UNFINISHED_MONTH


def group_of(group_by: GroupBy, key: str, state: State) -> int:
    """The number of the group that a row's key and state name. Raises ValueError for what is no key."""
    match group_by:
        case GroupBy.MONTH if key == UNFINISHED_MONTH:
            base = 0
        case GroupBy.MONTH:
            first = date.fromisoformat(f"{key}-01")
            base = first.year * 12 + first.month - 1
        case GroupBy.MATERIAL_KIND:
            MaterialKind(key)
            base = 0
        case _:
            base = int(key)
            if not 0 < base < LARGEST_ID:
                raise ValueError(f"{key} is no id")
    return base * 2 + (state is State.UNFINISHED)


def movements_url(question: Question, key: str, state: State) -> str:
    """Where the lines stand that sum to a row."""
    query = {"group_by": question.group_by.value, "key": key, "purpose": question.purpose, "state": state.value}
    if state is State.FINISHED:
        days = {"from": question.first_day, "to": question.last_day}
        query |= {name: day.isoformat() for name, day in days.items() if day}
    return f"/api/reports/cost-per-sqft/movements/?{urlencode(query)}"
