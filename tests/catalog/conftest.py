"""A supplier, a two-part resin and a powder, put on the list through the API as the owner would."""

from collections.abc import Callable
from typing import Any

import pytest
from rest_framework.test import APIClient

from inventory.shop.models import Person

Add = Callable[..., dict[str, Any]]


@pytest.fixture
def office(api: Callable[[Person], APIClient], owner: Person) -> APIClient:
    """The owner's client."""
    return api(owner)


@pytest.fixture
def supplier(office: APIClient) -> dict[str, Any]:
    return added(office, "suppliers", {"name": "Harbour Resin Supply", "lead_time_days": 6})


@pytest.fixture
def material(office: APIClient) -> Add:
    """Adds a material: `material("R-1", kind="hardener")`."""

    def add(code: str, **fields: Any) -> dict[str, Any]:
        body = {"code": code, "name": f"Material {code}", "kind": "resin", "stock_unit": "ml"} | fields
        return added(office, "materials", body)

    return add


@pytest.fixture
def resin(material: Add) -> dict[str, Any]:
    return material("R-1", name="Table resin A", density_g_per_ml="1.13")


@pytest.fixture
def hardener(material: Add) -> dict[str, Any]:
    return material("H-1", name="Table hardener B", kind="hardener", density_g_per_ml="0.96")


def added(client: APIClient, nouns: str, body: dict[str, Any]) -> dict[str, Any]:
    answer = client.post(f"/api/{nouns}/", body)
    assert answer.status_code == 201, answer.json()
    record: dict[str, Any] = answer.json()
    return record


def pointers(answer: Any) -> list[str]:
    """Where the answer says that the body needs mending."""
    assert answer.status_code == 400, (answer.status_code, answer.content)
    return [error["pointer"] for error in answer.json()["errors"]]
