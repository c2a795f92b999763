"""How many SQL statements a pour costs, however long its history."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from decimal import Decimal
from itertools import count
from typing import Any

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext
from rest_framework.test import APIClient

from inventory.catalog.models import Material
from inventory.shop.models import Person
from tests.pours.conftest import Workshop, usage

MOST_FOR_TWELVE_LINES = 20
keys = count()


@contextmanager
def counted() -> Iterator[list[str]]:
    """The statements inside, without BEGIN, COMMIT and savepoints."""
    statements: list[str] = []
    with CaptureQueriesContext(connection) as captured:
        yield statements
    bookkeeping = ("SAVEPOINT", "RELEASE", "BEGIN", "COMMIT", "ROLLBACK")
    statements += [row["sql"] for row in captured if not row["sql"].startswith(bookkeeping)]


@pytest.fixture
def twelve(workshop: Workshop) -> list[Material]:
    """Twelve materials on the shelf, one of them colour-matched, one with measures, each in two lots."""
    materials = [workshop.resin, workshop.hardener, workshop.mica]
    materials += [
        workshop.material(
            f"D-{number}", f"Dye {number}", "dye", "ml", measures="dash = 1 ml", density_g_per_ml=Decimal(1)
        )
        for number in range(9)
    ]
    for material in materials:
        unit = "g" if material.stock_unit == "g" else "ml"
        for use_by in ("2026-12-01", "2027-01-01"):
            workshop.lot(material, f"100 {unit}", use_by=use_by)
    return materials


@pytest.fixture
def signed_in(crew: Person) -> APIClient:
    """The browser's way in: session cookie, which costs a statement more than a token."""
    client = APIClient()
    client.force_login(crew)
    return client


def complete(workshop: Workshop, client: APIClient, lines: list[dict[str, Any]], **body: Any) -> tuple[Any, list[str]]:
    pour = workshop.planned(*lines)
    with counted() as statements:
        answer = client.post(
            f"/api/pours/{pour['id']}/complete/", body, headers={"Idempotency-Key": f"key-{next(keys)}"}
        )
    assert answer.status_code == 200, answer.json()
    return answer.json(), statements


def test_a_pour_of_twelve_lines_costs_at_most_twenty_statements(
    workshop: Workshop, twelve: list[Material], signed_in: APIClient
) -> None:
    lines = [usage(material, "2 g" if material.stock_unit == "g" else "2 ml") for material in twelve]

    planned, as_planned = complete(workshop, signed_in, lines)
    given, otherwise = complete(workshop, signed_in, [], usages=lines, poured_at="2026-06-14T15:00:00Z")
    for _ in range(4):
        workshop.poured(*lines)
    _, later = complete(workshop, signed_in, lines)

    assert len(planned["usages"]) == len(given["usages"]) == 12
    assert len(as_planned) <= MOST_FOR_TWELVE_LINES, "\n".join(as_planned)
    assert len(otherwise) <= MOST_FOR_TWELVE_LINES, "\n".join(otherwise)
    assert len(later) == len(as_planned)


def test_the_lines_share_their_statements(workshop: Workshop, twelve: list[Material], bench: APIClient) -> None:
    def cost(act: Callable[[int], Any]) -> list[int]:
        found = []
        for lines in (3, 12):
            with counted() as statements:
                assert act(lines).status_code in (200, 201)
            found.append(len(statements))
        return found

    def lines(number: int) -> list[dict[str, Any]]:
        return [usage(material, "1 g" if material.stock_unit == "g" else "1 ml") for material in twelve[:number]]

    pours = iter([workshop.poured(*lines(1)) for _ in range(8)])
    plans = iter([workshop.planned() for _ in range(4)])
    acts: dict[str, Callable[[int], Any]] = {
        "plan": lambda number: workshop.plan(*lines(number)),
        "log": lambda number: workshop.plan(*lines(number), complete=True),
        "change": lambda number: bench.patch(f"/api/pours/{next(plans)['id']}/", {"usages": lines(number)}),
        "add": lambda number: workshop.act(next(pours), "additions", usages=lines(number)),
        "correct": lambda number: workshop.act(next(pours), "correct", usages=lines(number), reason="x"),
    }

    for name, act in acts.items():
        few, many = cost(act)
        assert few == many, name


def test_reading_pours_costs_the_same_however_many(
    workshop: Workshop, twelve: list[Material], office: APIClient
) -> None:
    def cost(address: str) -> int:
        with counted() as statements:
            assert office.get(address).status_code == 200
        return len(statements)

    lines = [usage(material, "1 g" if material.stock_unit == "g" else "1 ml") for material in twelve]
    first, plan = workshop.poured(lines[0]), workshop.planned(lines[2])
    addresses = ["/api/pours/", "/api/pours/?status=completed&ordering=-poured_at&search=run"]
    short = [cost(address) for address in addresses]
    one, planned = cost(f"/api/pours/{first['id']}/"), cost(f"/api/pours/{plan['id']}/")

    big, big_plan = workshop.poured(*lines), workshop.planned(*lines)
    for _ in range(6):
        workshop.poured(*lines[:2])

    assert [cost(address) for address in addresses] == short
    assert max(short) <= 6
    assert (cost(f"/api/pours/{big['id']}/"), cost(f"/api/pours/{big_plan['id']}/")) == (one, planned)
    assert one <= 12
    assert planned <= 18


def test_the_list_is_filtered_by_what_people_look_for(
    workshop: Workshop, twelve: list[Material], bench: APIClient, crew: Person
) -> None:
    lot = workshop.lot(workshop.resin, "1 l", use_by="2026-07-01")
    poured = workshop.poured(usage(workshop.resin, "1 ml"), poured_at="2026-06-14T20:00:00-05:00", people=[crew.pk])
    planned = workshop.planned(layer="top_coat", poured_at="2026-06-20T15:00:00Z", note="Before noon")

    def ids(query: str) -> list[int]:
        answer = bench.get(f"/api/pours/?{query}")
        assert answer.status_code == 200, answer.json()
        return [row["id"] for row in answer.json()["results"]]

    assert ids("status=planned") == ids("layer=top_coat") == ids("search=noon") == [planned["id"]]
    assert ids("status=completed") == ids(f"lot={lot.pk}") == ids(f"person={crew.pk}") == [poured["id"]]
    assert ids(f"material={workshop.resin.pk}") == [poured["id"]]
    assert ids(f"job={workshop.job.pk}") == ids(f"piece={workshop.tops()[0]}") == [planned["id"], poured["id"]]
    assert ids("poured_from=2026-06-14&poured_to=2026-06-14") == [poured["id"]]
    assert ids("poured_from=2026-06-15") == ids("needs_owner_reason=true") == []
    assert ids("planned_to=2026-06-19") == []
    assert ids("planned_to=2026-06-20") == [planned["id"]]
    assert bench.get("/api/pours/?cost=3").status_code == 400
    assert bench.get("/api/pours/?ordering=cost").status_code == 400
