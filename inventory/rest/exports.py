"""Tables that stream: CSV and XLSX of any length in bounded memory.

A table is written to a temporary file first and sent from there: what arrives is whole or an error, and a slow reader
holds no database connection. CSV begins with a byte order mark, because spreadsheet programs otherwise take UTF-8 for
the machine's own encoding. Text that a spreadsheet would run as a formula stays text in both forms.
"""

import csv
import io
import re
import tempfile
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime
from decimal import Decimal
from enum import StrEnum
from typing import IO, Any

from django.http import FileResponse
from django.utils import timezone
from openpyxl import Workbook
from openpyxl.cell import WriteOnlyCell
from openpyxl.cell.cell import ILLEGAL_CHARACTERS_RE
from openpyxl.styles import Font
from openpyxl.utils import get_column_letter
from rest_framework.request import Request

from inventory.rest.filters import bad_parameters
from inventory.rest.problems import Unprocessable

XLSX_ROWS = 1_048_576  # rows of a sheet: ECMA-376, and the limit that spreadsheet programs state
XLSX_TEXT = 32_767
COLUMN_WIDTH = 18
FORMULA_START = re.compile(r"[=+\-@\t\r\n|＝＋－＠]")
CHUNK = 1 << 16


class Kind(StrEnum):
    TEXT = "text"
    QUANTITY = "quantity"
    MONEY = "money"
    NUMBER = "number"
    DATE = "date"
    MOMENT = "moment"


class Format(StrEnum):
    """The forms in which a report or list is answered."""

    JSON = "json"
    CSV = "csv"
    XLSX = "xlsx"


MEDIA_TYPES = {
    Format.CSV: "text/csv",
    Format.XLSX: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
}
NUMBER_FORMATS = {Kind.MONEY: "#,##0.00##", Kind.DATE: "yyyy-mm-dd"}


FORMAT = "format"


class TooManyRows(Unprocessable):
    slug = "too-many-rows"
    title = "A sheet cannot hold that many rows"


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


def chosen_format(request: Request, allowed: Sequence[Format]) -> Format:
    """The form that `?format=` asks for, JSON without it. Raises BadQuery naming the allowed ones."""
    asked = request.query_params.get(FORMAT, Format.JSON.value)
    if asked not in allowed:
        names = ", ".join(allowed)
        raise bad_parameters({FORMAT: [f"There is no such form of this. There are: {names}."]})
    return Format(asked)


def answer_table(table: Table, form: Format) -> FileResponse:
    """The table as a download. Raises TooManyRows for a sheet that cannot hold it."""
    file = tempfile.TemporaryFile()  # noqa: SIM115  (the answer closes it)
    try:
        (write_xlsx if form is Format.XLSX else write_csv)(table, file)
    except BaseException:
        file.close()
        raise
    file.seek(0)
    filename = f"{table.name}-{timezone.now():%Y-%m-%d}.{form.value}"
    return FileResponse(file, as_attachment=True, filename=filename, content_type=MEDIA_TYPES[form])


def write_csv(table: Table, file: IO[bytes]) -> None:
    text = io.TextIOWrapper(file, encoding="utf-8-sig", newline="", write_through=False)
    writer = csv.writer(text)
    writer.writerow([column.key for column in table.columns])
    for row in table.rows:
        writer.writerow([csv_cell(value) for value in row])
    text.flush()
    text.detach()


def csv_cell(value: Any) -> str:
    """A cell of CSV: numbers exact and without exponent, text that looks like a formula behind an apostrophe.

    >>> csv_cell(Decimal("-0.30")), csv_cell("=1+1")
    ('-0.30', "'=1+1")
    """
    if value is None:
        return ""
    if isinstance(value, Decimal):
        return format(value, "f")
    if isinstance(value, datetime):
        return value.astimezone(UTC).isoformat()
    if isinstance(value, int | date):
        return str(value)
    text = str(value)
    return "'" + text if FORMULA_START.match(text) else text


def write_xlsx(table: Table, file: IO[bytes]) -> None:
    book = Workbook(write_only=True)
    sheet = book.create_sheet("Table")
    sheet.freeze_panes = "A2"
    for index, _ in enumerate(table.columns, start=1):
        sheet.column_dimensions[get_column_letter(index)].width = COLUMN_WIDTH
    sheet.append([heading_cell(sheet, column.title) for column in table.columns])
    makers = [cell_maker(sheet, column.kind) for column in table.columns]
    try:
        for count, row in enumerate(table.rows, start=2):
            if count > XLSX_ROWS:
                raise too_many_rows()
            sheet.append([make(value) for make, value in zip(makers, row, strict=True)])
    except BaseException:
        sheet.close()
        sheet._writer.cleanup()
        raise
    book.save(file)


def heading_cell(sheet: Any, title: str) -> Any:
    cell = WriteOnlyCell(sheet, value=title)
    cell.font = Font(bold=True)
    return cell


def cell_maker(sheet: Any, kind: Kind) -> Callable[[Any], Any]:
    """What turns a value of a column into its cell. One cell serves the whole column: a row is written at once."""
    cell = WriteOnlyCell(sheet)
    if kind in NUMBER_FORMATS:
        cell.number_format = NUMBER_FORMATS[kind]

    def text(value: Any) -> Any:
        if value is None:
            return None
        shown = value.astimezone(UTC).isoformat() if isinstance(value, datetime) else str(value)
        cell.value = ILLEGAL_CHARACTERS_RE.sub("\ufffd", shown[:XLSX_TEXT])
        cell.data_type = "s"  # neither formula nor error, whatever it looks like
        return cell

    def number(value: Any) -> Any:
        if not isinstance(value, int | Decimal | date) or isinstance(value, datetime):
            return text(value)
        cell.value = value
        return cell

    return text if kind in (Kind.TEXT, Kind.MOMENT) else number


def too_many_rows() -> TooManyRows:
    return TooManyRows(
        f"A sheet holds {XLSX_ROWS:,} rows with its heading, and this has more. Narrow it, or take CSV.",
        remedies=[
            {"kind": "narrow", "text": "Ask for fewer rows: a shorter period, one material, one lot."},
            {"kind": "use_csv", "text": "Take format=csv, which has no limit."},
        ],
    )
