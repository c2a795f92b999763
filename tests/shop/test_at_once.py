"""Two people at once: the shop is set up once, and keeps an owner."""

from collections.abc import Callable
from threading import Barrier, Thread

import pytest
from django.db import connection

from inventory.rest.problems import Conflict, Problem, Role
from inventory.shop import actions
from inventory.shop.models import Person, Shop
from inventory.shop.problems import AlreadySetUp, LastOwner

pytestmark = pytest.mark.django_db(transaction=True)


def at_once(*acts: Callable[[], object]) -> list[Problem]:
    """Do all of these at the same moment, each over a connection of its own; the problems that they met."""
    met: list[Problem] = []
    start = Barrier(len(acts))

    def run(act: Callable[[], object]) -> None:
        start.wait()
        try:
            act()
        except Problem as problem:
            met.append(problem)
        finally:
            connection.close()

    threads = [Thread(target=run, args=[act]) for act in acts]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    return met


def test_of_two_set_ups_at_once_one_makes_the_shop():
    met = at_once(
        *(
            lambda name=name: actions.set_up_shop(
                owner_name=name, username=name, password="tidal-flat-42", name=f"Shop of {name}"
            )
            for name in ("ines", "bo", "till", "mara")
        )
    )

    assert [type(problem) for problem in met] == [AlreadySetUp] * 3
    assert Person.objects.count() == Shop.objects.count() == 1


def test_two_owners_who_step_down_at_once_leave_one():
    Shop.objects.create(pk=1, name="Kelp Lane Tops")
    owners = [
        Person.objects.create_user(username=name, password="tidal-flat-42", role=Role.OWNER) for name in ("ines", "bo")
    ]

    met = at_once(
        lambda: actions.change_person(person=owners[0], role=Role.CREW, by=owners[0]),
        lambda: actions.change_person(person=owners[1], is_active=False, by=owners[1]),
    )

    assert [type(problem) for problem in met] == [LastOwner]
    assert Person.objects.filter(role=Role.OWNER, is_active=True).count() == 1


def test_two_who_take_one_username_at_once_end_with_one_person():
    Shop.objects.create(pk=1, name="Kelp Lane Tops")
    owner = Person.objects.create_user(username="ines", password="tidal-flat-42", role=Role.OWNER)

    met = at_once(*[lambda: actions.add_person(username="bo", name="Bo", by=owner)] * 3)

    assert len(met) == 2
    assert not any(isinstance(problem, Conflict) for problem in met)
    assert all(problem.errors[0]["pointer"] == "/username" for problem in met)
    assert Person.objects.filter(username="bo").count() == 1
