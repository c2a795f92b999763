"""A process that is killed while it posts leaves each pour whole or absent, and the same key posts it once."""

import json
import os
import signal
import time
from collections.abc import Iterator
from random import Random

import pytest
from django.core.management import call_command
from django.db import connections
from django.db.models import Count, Sum
from rest_framework.authtoken.models import Token
from rest_framework.test import APIClient

from inventory.pours.models import Pour, Usage
from inventory.rest.models import IdempotencyKey
from inventory.stock.models import Kind, Movement, Posting
from tests.pours.conftest import Workshop

pytestmark = pytest.mark.django_db(transaction=True)

KILLS = 50
POURS = 400


def body(workshop: Workshop, number: int) -> str:
    usages = [
        {"material": workshop.resin.pk, "quantity": f"{20 + number % 7} ml"},
        {"material": workshop.hardener.pk, "quantity": f"{10 + number % 5} ml"},
        {"material": workshop.mica.pk, "quantity": f"{1 + number % 3} g"},
    ]
    return json.dumps({"pieces": workshop.tops(), "layer": "flood_coat", "usages": usages, "complete": True})


def post_in_turn(workshop: Workshop, token: str, first: int, answered: int) -> None:
    """The child: posts pour after pour, each by its own key, and says so on the pipe when it is answered."""
    connections.close_all()
    client = APIClient()
    client.credentials(HTTP_AUTHORIZATION=f"Token {token}")
    os.write(answered, b"\n")
    for number in range(first, POURS):
        answer = client.post(
            "/api/pours/",
            body(workshop, number),
            content_type="application/json",
            headers={"Idempotency-Key": f"pour-{number}"},
        )
        if answer.status_code != 201:
            os.write(answered, f"refused {number}: {answer.content!r}\n".encode())
            return
        os.write(answered, f"{number}\n".encode())


def lines_of(pipe: int) -> Iterator[str]:
    """What comes through the pipe, line by line, until the other end is gone."""
    kept = b""
    while piece := os.read(pipe, 65536):
        *whole, kept = (kept + piece).split(b"\n")
        yield from (line.decode() for line in whole)


def run_until_killed(workshop: Workshop, token: str, first: int, after: float | None) -> int:
    """Fork a child that posts from `first` on; kill it so many seconds after it began, or let it end.

    Returns the number of the first pour that nobody answered for.
    """
    reading, writing = os.pipe()
    connections.close_all()
    child = os.fork()
    if child == 0:
        os.close(reading)
        try:
            post_in_turn(workshop, token, first, writing)
        finally:
            os._exit(0)
    os.close(writing)
    assert os.read(reading, 1) == b"\n"
    if after is not None:
        time.sleep(after)
        os.kill(child, signal.SIGKILL)
    answered = list(lines_of(reading))
    os.close(reading)
    os.waitpid(child, 0)
    assert not [line for line in answered if line.startswith("refused")], answered
    return max([first, *(int(line) + 1 for line in answered if line)])


def test_fifty_kills_leave_every_pour_whole_or_absent_and_no_pour_twice(workshop: Workshop) -> None:
    workshop.lot(workshop.resin, "40 l")
    workshop.lot(workshop.hardener, "20 l")
    workshop.lot(workshop.mica, "2000 g")
    token = Token.objects.get_or_create(user=workshop.owner)[0].key
    random = Random(50)
    first = lost_answers = 0

    for _ in range(KILLS):
        first = run_until_killed(workshop, token, first, after=random.uniform(0, 0.16))
        done = Pour.objects.count()
        assert done in (first, first + 1), "each answered pour is there, and at most the one that was under way"
        lost_answers += done - first
        assert Pour.objects.exclude(status="completed").count() == 0
        whole = Usage.objects.values("pour").annotate(lines=Count("id")).values_list("lines", flat=True)
        assert set(whole) <= {3}

    assert first < POURS, "the kills came while there was work to do"
    assert run_until_killed(workshop, token, first, after=None) == POURS
    assert Pour.objects.count() == Posting.objects.filter(kind=Kind.USED).count() == POURS
    assert IdempotencyKey.objects.filter(path="/api/pours/", status=201).count() == POURS
    used = Movement.objects.filter(kind=Kind.USED, material=workshop.resin).aggregate(sum=Sum("quantity"))["sum"]
    assert used == -sum(20 + number % 7 for number in range(POURS))
    call_command("verify_ledger", verbosity=0)
    print(f"{KILLS} kills, {lost_answers} of them after the posting and before its answer arrived")
