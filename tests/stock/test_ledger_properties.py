"""Hundreds of random acts through the real actions, told to the database and to an independent oracle alike."""

from random import Random

import pytest
from django.core.management import call_command

from inventory.stock.verification import verify
from tests.random_shop import RandomShop
from tests.stock.database_ledger import DatabaseLedger
from tests.stock.shelf import Shelf

SEEDS = range(4)


def run(shelf: Shelf, seed: int, *, acts: int, verify_every: int) -> RandomShop:
    shop = RandomShop(DatabaseLedger(shelf), Random(seed))

    def recount(step: int) -> None:
        if step % verify_every == verify_every - 1:
            assert [finding.words for finding in verify()] == []
            shop.compare_history()

    shop.run(acts, after=recount)
    return shop


@pytest.mark.parametrize("seed", SEEDS)
def test_whatever_happens_the_database_says_what_the_rules_say(shelf: Shelf, seed: int) -> None:
    shop = run(shelf, seed, acts=120, verify_every=10)

    assert shop.refusals > 5
    assert len(shop.acts) >= 9
    call_command("verify_ledger", verbosity=0)
