"""The order of a report's rows: by any of its columns, either way up."""

from collections.abc import Mapping, Sequence
from functools import reduce
from typing import Any, TypeVar

from inventory.rest.filters import bad_parameters

Row = TypeVar("Row")


def chosen_order(ordering: str, allowed: Mapping[str, str]) -> list[tuple[str, bool]]:
    """`-cost,label` as [(attribute, whether it is turned around)], the most important first. Raises BadQuery.

    allowed: the names that may be ordered by, with the dotted attribute of a row that each stands for.
    """
    names = [name.strip() for name in ordering.split(",") if name.strip()]
    unknown = [name for name in names if name.removeprefix("-") not in allowed]
    if unknown:
        listed = ", ".join(allowed)
        raise bad_parameters({"ordering": [f"Cannot order by {name}. Allowed: {listed}." for name in unknown]})
    return [(allowed[name.removeprefix("-")], name.startswith("-")) for name in names]


def in_order(rows: Sequence[Row], order: Sequence[tuple[str, bool]]) -> list[Row]:
    """The rows in this order; empty values last either way up, and equal rows as they stood."""
    found = list(rows)
    for attribute, is_turned in reversed(order):
        filled = [row for row in found if value_of(row, attribute) is not None]
        empty = [row for row in found if value_of(row, attribute) is None]
        found = sorted(filled, key=lambda row: value_of(row, attribute), reverse=is_turned) + empty
    return found


def value_of(row: Any, attribute: str) -> Any:
    """The value behind a dotted attribute; None where something on the way is empty. Text without regard to case."""
    value = reduce(step, attribute.split("."), row)
    return value.casefold() if isinstance(value, str) else value


def step(value: Any, name: str) -> Any:
    if value is None:
        return None
    return value.get(name) if isinstance(value, Mapping) else getattr(value, name)
