"""`manage.py verify_ledger`: recount everything, and say what differs."""

from itertools import islice
from typing import Any

from django.core.management.base import BaseCommand, CommandError

from inventory.rest.snapshot import read_snapshot
from inventory.stock.models import Movement
from inventory.stock.verification import CHECKS

MOST_SHOWN = 20


class Command(BaseCommand):
    help = "Recounts the ledger: balances, identities, transfers, counts, trace, guards. Exits with 1 where it differs."

    def handle(self, *args: Any, **options: Any) -> None:
        differing = 0
        with read_snapshot():
            self.stdout.write(f"{Movement.objects.count():,} movements")
            for check, find in CHECKS.items():
                findings = find()
                shown = list(islice(findings, MOST_SHOWN))
                more = sum(1 for _ in findings)
                differing += len(shown) + more
                self.stdout.write(f"  {'DIFFERS' if shown else 'ok     '}  {check}")
                for words in shown:
                    self.stdout.write(f"           {words}")
                if more:
                    self.stdout.write(f"           and {more:,} more")
        if differing:
            raise CommandError(f"{differing:,} differences in the ledger")
        self.stdout.write("The ledger agrees with itself.")
