"""Reads that see one moment."""

import threading
from typing import Any

import pytest
from django.db import connection, connections, transaction

from inventory.catalog.models import Supplier
from inventory.rest.snapshot import read_snapshot

pytestmark = pytest.mark.django_db(transaction=True)


def elsewhere(work: Any) -> None:
    """Do the work on another connection and wait for it."""
    failures: list[Exception] = []

    def run() -> None:
        try:
            work()
        except Exception as failure:
            failures.append(failure)
        finally:
            connections.close_all()

    thread = threading.Thread(target=run)
    thread.start()
    thread.join()
    assert not failures


def add(number: int) -> Supplier:
    return Supplier.objects.create(number=number, name=f"Supplier {number}", lead_time_days=1)


def test_what_is_written_meanwhile_is_seen_only_afterwards():
    add(1)
    with read_snapshot():
        assert Supplier.objects.count() == 1
        elsewhere(lambda: add(2))  # and is not kept waiting
        assert Supplier.objects.count() == 1
        with read_snapshot():
            assert Supplier.objects.count() == 1
        assert Supplier.objects.count() == 1
    assert Supplier.objects.count() == 2


def test_without_it_two_reads_may_differ():
    assert Supplier.objects.count() == 0
    elsewhere(lambda: add(1))
    assert Supplier.objects.count() == 1


def test_a_later_write_takes_its_lock_as_usual():
    with read_snapshot():
        Supplier.objects.count()
    with transaction.atomic():
        add(1)
    with pytest.raises(ZeroDivisionError), read_snapshot():
        raise ZeroDivisionError
    assert not connection.in_atomic_block
    add(2)
    if connection.vendor == "sqlite":
        assert connection.transaction_mode == "IMMEDIATE"


def test_inside_a_transaction_it_is_part_of_it():
    with transaction.atomic():
        add(1)
        with read_snapshot():
            assert Supplier.objects.count() == 1
        add(2)
    assert Supplier.objects.count() == 2
