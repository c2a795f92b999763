"""Tables as CSV and XLSX: exact, safe to open, and of any length."""

import csv
import io
import tempfile
import tracemalloc
from collections.abc import Iterator
from datetime import UTC, date, datetime
from decimal import Decimal
from typing import Any

import pytest
from openpyxl import load_workbook

from inventory.rest import sheets
from inventory.rest.exports import Column, Format, Kind, Table, answer_table, write_csv, write_xlsx
from inventory.rest.sheets import TooManyRows

COLUMNS = [
    Column("lot", "Lot"),
    Column("quantity", "Quantity", Kind.QUANTITY),
    Column("value", "Value", Kind.MONEY),
    Column("use_by", "Use by", Kind.DATE),
    Column("at", "At", Kind.MOMENT),
    Column("count", "Count", Kind.NUMBER),
]
MOMENT = datetime(2026, 5, 31, 14, 30, tzinfo=UTC)
ROW = ("H-100 ½", Decimal("-0.300000"), Decimal("1234567.8901"), date(2026, 5, 31), MOMENT, 3)
FORMULAS = ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "=cmd|' /C calc'!A0", "#N/A"]


def as_csv(*rows: Any, columns: Any = COLUMNS) -> list[list[str]]:
    file = io.BytesIO()
    write_csv(Table("lots", columns, rows), file)
    return list(csv.reader(io.StringIO(file.getvalue().decode("utf-8-sig"), newline="")))


def as_sheet(*rows: Any, columns: Any = COLUMNS) -> Any:
    file = io.BytesIO()
    write_xlsx(Table("lots", columns, rows), file)
    return load_workbook(file).active


def test_csv_is_exact():
    heading, row, empty = as_csv(ROW, (None,) * 6)

    assert heading == ["lot", "quantity", "value", "use_by", "at", "count"]
    assert row == ["H-100 ½", "-0.300000", "1234567.8901", "2026-05-31", "2026-05-31T14:30:00+00:00", "3"]
    assert empty == [""] * 6


def test_csv_never_has_an_exponent():
    assert as_csv((Decimal("1E+3"), Decimal("1E-6")), columns=COLUMNS[:2])[1] == ["1000", "0.000001"]


def test_a_sheet_has_numbers_dates_and_a_frozen_heading():
    sheet = as_sheet(ROW, (None,) * 6)

    assert [cell.value for cell in sheet[1]] == [column.title for column in COLUMNS]
    assert sheet.freeze_panes == "A2"
    assert [cell.value for cell in sheet[2]] == [
        "H-100 ½",
        -0.3,
        1234567.8901,
        datetime(2026, 5, 31),  # noqa: DTZ001  (a sheet knows no zones)
        "2026-05-31T14:30:00+00:00",
        3,
    ]
    assert sheet["C2"].number_format == "#,##0.00##"
    assert sheet["D2"].number_format == "yyyy-mm-dd"


@pytest.mark.parametrize("text", FORMULAS)
def test_text_that_looks_like_a_formula_stays_text(text):
    cell = as_sheet((text, text), columns=COLUMNS[:2])["A2"]
    assert cell.data_type == "s"
    assert as_csv((text,), columns=COLUMNS[:1])[1][0] in (f"'{text}", text if text == "#N/A" else None)


def test_negative_numbers_are_not_taken_for_formulas():
    assert as_csv((Decimal(-3),), columns=COLUMNS[1:2])[1] == ["-3"]


def test_text_that_a_sheet_cannot_hold_is_mended_not_refused():
    sheet = as_sheet(("bell\x07", "x" * 40_000, " a < b & c "), columns=[COLUMNS[0]] * 3)
    assert sheet["A2"].value == "bell\ufffd"
    assert len(sheet["B2"].value) == 32_767
    assert sheet["C2"].value == " a < b & c "


def test_a_day_that_spreadsheets_disagree_on_is_text():
    sheet = as_sheet((date(1900, 3, 1), date(1900, 2, 28)), columns=[COLUMNS[3]] * 2)
    assert sheet["A2"].value == datetime(1900, 3, 1)  # noqa: DTZ001  (a sheet knows no zones)
    assert sheet["B2"].value == "1900-02-28"


def test_true_and_false_are_words():
    columns = [COLUMNS[0], COLUMNS[5]]
    assert as_csv((True, False), columns=columns)[1] == ["yes", "no"]
    assert [cell.value for cell in as_sheet((True, False), columns=columns)[2]] == ["yes", "no"]


def test_a_column_of_text_and_numbers_keeps_both():
    sheet = as_sheet(("a", Decimal(1)), ("b", "=2"), ("c", Decimal(3)), columns=COLUMNS[:2])
    assert [(row[0].value, row[1].value, row[1].data_type) for row in sheet.iter_rows(min_row=2)] == [
        ("a", 1, "n"),
        ("b", "=2", "s"),
        ("c", 3, "n"),
    ]


def test_without_money_the_columns_of_money_are_gone():
    table = Table("lots", COLUMNS, [ROW]).without_money()

    assert [column.key for column in table.columns] == ["lot", "quantity", "use_by", "at", "count"]
    assert [list(row) for row in table.rows] == [[value for value in ROW if value != ROW[2]]]


def test_a_download_is_named_and_sized():
    answer = answer_table(Table("lots", COLUMNS, [ROW]), Format.XLSX)

    assert answer["Content-Disposition"].startswith('attachment; filename="lots-20')
    assert answer["Content-Type"].startswith("application/vnd.openxmlformats")
    assert int(answer["Content-Length"]) == len(b"".join(answer.streaming_content))


def test_more_rows_than_a_sheet_holds_are_refused_with_a_way_out(monkeypatch):
    monkeypatch.setattr(sheets, "MAX_ROWS", 3)
    two = [ROW] * 2
    answer_table(Table("lots", COLUMNS, two), Format.XLSX)

    with pytest.raises(TooManyRows) as refusal:
        answer_table(Table("lots", COLUMNS, [*two, ROW]), Format.XLSX)

    assert refusal.value.status == 422
    assert {remedy["kind"] for remedy in refusal.value.remedies} == {"narrow", "use_csv"}
    answer_table(Table("lots", COLUMNS, [*two, ROW]), Format.CSV)


def kept(write: Any) -> int:
    """Bytes still held of 20,000 rows in the middle of 200,000 after they were written."""
    held = 0

    def rows() -> Iterator[Any]:
        nonlocal held
        for n in range(200_000):
            if n == 100_000:
                tracemalloc.start()
            if n == 120_000:
                held, _ = tracemalloc.get_traced_memory()
                tracemalloc.stop()
            yield f"H-{n}", Decimal(n) / 1000, Decimal(n), date(2026, 1, 1)

    with tempfile.TemporaryFile() as file:
        write(Table("lots", COLUMNS[:4], rows()), file)
        assert file.seek(0, io.SEEK_END) > 1_000_000
    return held


@pytest.mark.parametrize("write", [write_csv, write_xlsx])
def test_memory_does_not_grow_with_the_rows(write):
    assert kept(write) < 300_000  # 20,000 rows kept would be megabytes


def test_a_sheet_of_too_many_bytes_is_refused_too(monkeypatch):
    monkeypatch.setattr(sheets, "MAX_BYTES", 5_000)
    with pytest.raises(TooManyRows):
        as_sheet(*[ROW] * 100)
