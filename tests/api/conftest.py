"""One stocked shop for a whole module; each test's own changes are rolled back to it."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import pytest
from django.db import connection, transaction
from rest_framework.authtoken.models import Token

from inventory.rest.problems import Role
from inventory.shop.models import Person, Shop
from tests.api.stocked import Stocked, stock_a_shop


@dataclass
class World:
    people: dict[str, Person]
    tokens: dict[str, str]
    stocked: Stocked


@pytest.fixture(scope="module")
def world(django_db_setup: None, django_db_blocker: Any) -> Iterator[World]:
    with django_db_blocker.unblock():
        atomic = transaction.atomic()
        atomic.__enter__()
        Shop.objects.create(pk=1, name="Kelp Lane Tops", currency="USD", time_zone="America/Chicago")
        people = {role.value: _person(role) for role in Role}
        tokens = {role: Token.objects.create(user=who).key for role, who in people.items()}
        yield World(people, tokens, stock_a_shop(people["owner"]))
        transaction.set_rollback(True)
        atomic.__exit__(None, None, None)
        connection.close()


def _person(role: Role) -> Person:
    return Person.objects.create_user(role.value, password="pour-slowly-9", role=role, name=role.label)
