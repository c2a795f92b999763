"""What holds for every report: money for the owner alone, three forms, any order, and SQL that does not grow."""

import csv
import io
from collections.abc import Callable
from datetime import date
from decimal import Decimal
from typing import Any

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext
from openpyxl import load_workbook
from rest_framework.test import APIClient

from inventory.shop.models import Person
from inventory.stock.actions import Input, blend
from tests.reports.conftest import Works, read

REPORTS = (
    "/api/reports/cost-per-sqft/",
    "/api/reports/cost-per-sqft/?group_by=piece&state=all",
    "/api/reports/cost-per-sqft/movements/?key={job}",
    "/api/reports/reorder/",
    "/api/reports/expiring/?days=3660",
    "/api/reports/value/",
    "/api/reports/mass-balance/",
    "/api/reports/mass-balance/?material={material}",
    "/api/lots/{lot}/uses/",
    "/api/lots/{lot}/uses/?all_of_this_number=true",
    "/api/pieces/{piece}/sources/",
    "/api/jobs/{job}/sources/",
    "/api/pours/{pour}/sources/",
)
MONEY = {
    "cost", "cost_per_sqft", "by_kind", "waste_cost", "waste_by_kind", "redo_cost", "price", "value", "expired_value",
    "total_value", "share",
}  # fmt: skip


def fill(works: Works, times: int) -> dict[str, int]:
    """So many lots, jugs, jobs and pours; the ids to ask about."""
    job = works.job("Kitchen", "20", "10")
    for at in range(times):
        lot = works.lot(works.resin, "1000 ml", "777.7777", lot_number=f"L-{at % 2}", expires_on=date(2027, 1, 1))
        inputs = [Input(lot, Decimal(100)), Input(works.lot(works.resin, "9 ml"), None)]
        jug = blend(material=works.resin, inputs=inputs, by=works.owner).lot
        other = works.job(f"Job {at}", "10", customer=f"Customer {at}")
        on_both = [*job.pieces.all(), *other.pieces.all()]
        pour = works.pour(on_both, (lot, "10 ml"), (jug, "7 ml", "waste"), at="2026-06-15T15:00:00Z")
        works.finish(other, "2026-06-15")
    works.finish(job, "2026-06-15")
    piece = job.pieces.first()
    assert piece is not None
    return {
        "job": job.pk,
        "piece": piece.pk,
        "pour": pour.pk,
        "lot": lot.pk,
        "material": works.resin.pk,
        "customer": job.customer_id,
    }


@pytest.fixture
def filled(works: Works) -> dict[str, int]:
    return fill(works, 2)


def keys_in(value: Any) -> set[str]:
    if isinstance(value, dict):
        return set(value) | {key for inner in value.values() for key in keys_in(inner)}
    return {key for inner in value for key in keys_in(inner)} if isinstance(value, list) else set()


@pytest.mark.parametrize("report", REPORTS)
def test_money_is_for_the_owner_alone(
    api: Callable[[Person], APIClient], filled: dict[str, int], owner: Person, crew: Person, viewer: Person, report: str
) -> None:
    address = report.format(**filled)
    shown = keys_in(read(api(owner), address))
    for person in (crew, viewer):
        answer = api(person).get(address)
        assert answer.status_code == 200
        hidden = keys_in(answer.json())
        kinds = {"resin"} if "by_kind" in shown else set()
        assert shown - hidden == (shown & MONEY) | kinds | ({"total"} if "reports/value" in report else set())
        assert not hidden & MONEY
        assert "777" not in answer.content.decode()
        for form in ("csv", "xlsx"):
            columns = headings(api(person), address, form)
            assert not [column for column in columns if any(word in column.lower() for word in ("cost", "value"))]
    assert APIClient().get(address).status_code == 401


def headings(client: APIClient, address: str, form: str) -> list[str]:
    return table(client, address, form)[0]


def table(client: APIClient, address: str, form: str) -> list[list[str]]:
    joined = "&" if "?" in address else "?"
    answer = client.get(f"{address}{joined}format={form}")
    assert answer.status_code == 200
    body = b"".join(answer.streaming_content)  # type: ignore[attr-defined]
    if form == "csv":
        return list(csv.reader(io.StringIO(body.decode("utf-8-sig"))))
    sheet = load_workbook(io.BytesIO(body)).worksheets[0]
    return [[str(cell) for cell in row] for row in sheet.iter_rows(values_only=True)]


@pytest.mark.parametrize("report", REPORTS)
def test_every_report_comes_as_a_table_with_all_its_rows(
    office: APIClient, filled: dict[str, int], report: str
) -> None:
    address = report.format(**filled)

    as_csv, as_sheet = table(office, address, "csv"), table(office, address, "xlsx")
    assert len(as_csv) == len(as_sheet) > 1
    assert all(len(row) == len(as_csv[0]) for row in as_csv)
    body = read(office, address)
    if "uses" not in report and "sources" not in report:
        assert len(as_csv) - 1 == len(body.get("rows", body.get("lines")))


def test_the_tables_of_a_trace_sum_to_the_same(office: APIClient, filled: dict[str, int]) -> None:
    head, *rows = table(office, f"/api/lots/{filled['lot']}/uses/", "csv")
    at = head.index("quantity")
    assert sum(Decimal(row[at]) for row in rows) == 1000

    head, *rows = table(office, f"/api/jobs/{filled['job']}/sources/", "csv")
    lots = read(office, f"/api/jobs/{filled['job']}/sources/")["rows"]
    assert sum(Decimal(row[head.index("quantity")]) for row in rows) == sum(
        Decimal(lot["quantity"]["amount"]) for lot in lots
    )


@pytest.mark.parametrize("report", [report for report in REPORTS if "{" not in report and "balance" not in report])
def test_rows_stand_in_any_order_and_empty_ones_last(office: APIClient, filled: dict[str, int], report: str) -> None:
    joined = "&" if "?" in report else "?"
    listed = office.get(f"{report}{joined}ordering=nonsense").json()["errors"][0]["detail"]
    names = listed.removesuffix(".").split("Allowed: ")[1].split(", ")
    assert len(names) > 3
    plain = read(office, report)["rows"]
    for name in names:
        for sign in ("", "-"):
            rows = read(office, report, ordering=f"{sign}{name}")["rows"]
            assert sorted(map(str, rows)) == sorted(map(str, plain))
            values = [row.get(name) for row in rows if isinstance(row.get(name), int)]
            assert values == sorted(values, reverse=bool(sign))


@pytest.mark.parametrize("name", ["cost", "cost_per_sqft", "waste_cost", "redo_cost"])
def test_nobody_else_orders_by_money(office: APIClient, bench: APIClient, filled: dict[str, int], name: str) -> None:
    address = f"/api/reports/cost-per-sqft/?ordering=-{name}"

    assert office.get(address).status_code == 200
    assert bench.get(address).status_code == 400
    assert name not in bench.get(address).json()["errors"][0]["detail"].split("Allowed:")[1]


def test_ordering_by_cost_orders_by_cost(office: APIClient, works: Works, filled: dict[str, int]) -> None:
    works.finish(works.job("Bare", "1"), "2026-06-15")

    costs = [row["cost"] for row in read(office, "/api/reports/cost-per-sqft/", ordering="-cost")["rows"]]
    assert costs[-1] is None
    assert [Decimal(cost) for cost in costs[:-1]] == sorted((Decimal(cost) for cost in costs[:-1]), reverse=True)


@pytest.mark.parametrize(
    "report", [*REPORTS, "/api/today/", "/api/movements/?job={job}", "/api/movements/?customer={customer}"]
)
def test_statements_do_not_grow_with_the_rows(works: Works, office: APIClient, report: str) -> None:
    few = statements(office, report.format(**fill(works, 2)))
    many = statements(office, report.format(**fill(works, 8)))

    assert few == many <= 20


def statements(client: APIClient, address: str) -> int:
    client.get(address)
    with CaptureQueriesContext(connection) as captured:
        assert client.get(address).status_code == 200
    return len([query for query in captured.captured_queries if "SAVEPOINT" not in query["sql"]])


def test_movements_are_filtered_by_what_stands_above_the_ledger(
    works: Works, office: APIClient, filled: dict[str, int]
) -> None:
    def lines(**query: Any) -> int:
        return int(read(office, "/api/movements/", **query)["count"])

    assert lines(pour=filled["pour"]) == 2
    assert lines(piece=filled["piece"]) == lines(job=filled["job"]) == lines(kind="used") + lines(kind="wasted") == 4
    assert lines(direction="in") + lines(direction="out") == lines()
    assert lines(direction="out", kind="received") == 0
    assert office.get("/api/movements/", {"job": 424242}).status_code == 400
