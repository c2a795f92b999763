"""What all tests share: the clock's zone, people, signed-in clients, and a ledger that can be emptied between tests."""

import os
from collections.abc import Callable, Iterator
from typing import Any

import pytest
from django.db import connections
from hypothesis import HealthCheck, settings
from rest_framework.test import APIClient

from inventory.rest.problems import Role
from inventory.shop.models import Person, Shop
from inventory.stock.triggers import drop_triggers, install_triggers

settings.register_profile(
    "shop", deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow]
)
settings.load_profile("shop")
os.environ.setdefault("DJANGO_ALLOW_ASYNC_UNSAFE", "1")


LONG = ("tests/test_on_postgresql.py", "tests/browser/", "tests/test_front_end.py", "tests/test_code.py")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """The longest go first, so that parallel workers end together."""
    order = {prefix: rank for rank, prefix in enumerate(LONG)}
    items.sort(key=lambda item: next((order[prefix] for prefix in LONG if item.nodeid.startswith(prefix)), len(LONG)))


@pytest.fixture(autouse=True, scope="session")
def _ledger_can_be_emptied() -> Iterator[None]:
    """A transactional test empties every table afterwards; the guards over the ledger step aside for that."""
    from django.core.management.commands import flush

    original = flush.Command.handle

    def handle(self: Any, **options: Any) -> None:
        connection = connections[options["database"]]
        drop_triggers(connection)
        try:
            original(self, **options)
        finally:
            install_triggers(connection)

    flush.Command.handle = handle  # type: ignore[method-assign]
    yield
    flush.Command.handle = original  # type: ignore[method-assign]


@pytest.fixture
def shop(db: None) -> Shop:
    return Shop.objects.create(pk=1, name="Kelp Lane Tops", currency="USD", time_zone="America/Chicago")


def person(role: Role) -> Person:
    return Person.objects.create_user(
        username=f"{role.value}-person", password="pour-slowly-9", role=role, name=role.label
    )


@pytest.fixture
def owner(shop: Shop) -> Person:
    return person(Role.OWNER)


@pytest.fixture
def crew(shop: Shop) -> Person:
    return person(Role.CREW)


@pytest.fixture
def viewer(shop: Shop) -> Person:
    return person(Role.VIEWER)


@pytest.fixture
def api() -> Callable[[Person], APIClient]:
    """A client that is signed in by token as a person."""

    def sign_in(who: Person) -> APIClient:
        from rest_framework.authtoken.models import Token

        client = APIClient()
        client.credentials(HTTP_AUTHORIZATION=f"Token {Token.objects.get_or_create(user=who)[0].key}")
        return client

    return sign_in
