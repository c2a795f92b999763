"""What an export is made of."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Any


class Kind(StrEnum):
    TEXT = "text"
    QUANTITY = "quantity"
    MONEY = "money"
    NUMBER = "number"
    DATE = "date"
    MOMENT = "moment"


def in_words(value: Any) -> str:
    """A cell as text; true and false are yes and no."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    return str(value)


@dataclass(frozen=True)
class Column:
    """key: stable name, the CSV's heading; title: in words, the sheet's heading."""

    key: str
    title: str
    kind: Kind = Kind.TEXT


@dataclass(frozen=True)
class Table:
    """A table to export. name: of the file, without ending. rows: one cell for each column, read once."""

    name: str
    columns: Sequence[Column]
    rows: Iterable[Sequence[Any]]

    def without_money(self) -> "Table":
        """The same table with its columns of money taken out."""
        kept = [index for index, column in enumerate(self.columns) if column.kind is not Kind.MONEY]
        if len(kept) == len(self.columns):
            return self
        rows = ([row[index] for index in kept] for row in self.rows)
        return replace(self, columns=[self.columns[index] for index in kept], rows=rows)
