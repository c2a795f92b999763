"""Tables that stream: CSV and XLSX of any length in bounded memory.

A table is written to a temporary file first and sent from there: what arrives is whole or an error, and a slow reader
holds no database connection. CSV begins with a byte order mark, because spreadsheet programs otherwise take UTF-8 for
the machine's own encoding. Text that a spreadsheet would run as a formula stays text in both forms.
"""

import csv
import io
import re
import tempfile
from collections.abc import Sequence
from datetime import UTC, date, datetime
from decimal import Decimal
from enum import StrEnum
from typing import IO, Any

from django.http import FileResponse
from django.utils import timezone
from rest_framework.request import Request

from inventory.rest.filters import bad_parameters
from inventory.rest.sheets import write_xlsx
from inventory.rest.tables import Column, Kind, Table, in_words

FORMULA_START = re.compile(r"[=+\-@\t\r\n|＝＋－＠]")


class Format(StrEnum):
    """The forms in which a report or list is answered."""

    JSON = "json"
    CSV = "csv"
    XLSX = "xlsx"


MEDIA_TYPES = {
    Format.CSV: "text/csv",
    Format.XLSX: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
}
FORMAT = "format"

__all__ = ["Column", "Format", "Kind", "Table", "answer_table", "chosen_format", "write_csv", "write_xlsx"]


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
    write = write_xlsx if form is Format.XLSX else write_csv
    try:
        write(table, file)
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
    if isinstance(value, int | date) and not isinstance(value, bool):
        return str(value)
    text = in_words(value)
    return "'" + text if FORMULA_START.match(text) else text
