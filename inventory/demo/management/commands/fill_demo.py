"""Fill an empty database with the invented shop."""

from typing import Any

from django.core.management.base import BaseCommand
from tqdm import tqdm

from inventory.demo.fill import fill
from inventory.shop.models import Person


class Command(BaseCommand):
    help = "Fill an empty database with an invented shop and eighteen months of its work; keeps what is there."

    def handle(self, **options: Any) -> None:
        if Person.objects.exists():
            self.stdout.write("There is a shop already; the demo leaves it as it is.")
            return
        with tqdm(total=139, desc="Eighteen months of pours", unit=" pours", disable=None) as bar:
            fill(progress=bar.update)
        self.stdout.write("The demo shop is open.")
