"""The invented history is a true one: whatever holds of a real ledger holds of it."""

import pytest
from django.core.management import call_command
from django.db import connection

from inventory.pours.models import Pour, PourPiece, Usage
from inventory.stock.models import Kind, Movement
from inventory.stock.triggers import missing_triggers
from tests.benchmarks.building import build
from tests.benchmarks.world import LINES


@pytest.mark.django_db(transaction=True)
def test_a_history_of_two_thousand_movements_is_a_true_ledger():
    facts = build(2_000)

    call_command("verify_ledger")
    assert missing_triggers(connection) == []
    assert 1_900 <= Movement.objects.count() == facts.movements <= 2_300
    assert Usage.objects.count() == LINES * Pour.objects.count() == LINES * facts.pours
    assert Movement.objects.filter(lot=facts.big_lot, kind=Kind.USED).count() == facts.pours
    assert set(Movement.objects.values_list("kind", flat=True)) >= {"opened", "blended", "charged", "wasted"}
    assert PourPiece.objects.filter(piece__job=facts.deep_job).exists()
