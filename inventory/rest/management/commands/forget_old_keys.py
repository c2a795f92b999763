from typing import Any

from django.core.management.base import BaseCommand

from inventory.rest.idempotency import KEPT_FOR, forget_old_keys


class Command(BaseCommand):
    help = f"Forget the answers kept for retries that are older than {KEPT_FOR.days} days."

    def handle(self, *args: Any, **options: Any) -> None:
        self.stdout.write(f"{forget_old_keys()} forgotten.")
