"""A job with two tops, made through the API as anybody would."""

from collections.abc import Callable
from typing import Any

import pytest
from rest_framework.test import APIClient

from inventory.shop.models import Person


@pytest.fixture
def bench(api: Callable[[Person], APIClient], crew: Person) -> APIClient:
    """The crew's client."""
    return api(crew)


@pytest.fixture
def office(api: Callable[[Person], APIClient], owner: Person) -> APIClient:
    """The owner's client."""
    return api(owner)


@pytest.fixture
def job(bench: APIClient) -> dict[str, Any]:
    """The job of the worked example: a top of 120 × 25.5 in with edge and splash, and a round table."""
    answer = bench.post(
        "/api/jobs/",
        {
            "customer": {"name": "Wren Okafor"},
            "title": "Kitchen run",
            "due_on": "2026-06-30",
            "pieces": [
                {
                    "name": "Run",
                    "length_in": "120",
                    "width_in": "25 1/2",
                    "edges": [{"length_in": "120", "height_in": "1.5"}],
                    "splash": [{"length_in": "120", "height_in": "4"}],
                },
                {"name": "Table", "diameter_in": "48"},
            ],
        },
    )
    assert answer.status_code == 201, answer.json()
    made: dict[str, Any] = answer.json()
    return made
