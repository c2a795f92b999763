"""Fill an empty, migrated database with a world."""

from datetime import UTC, datetime, timedelta

from inventory.rest.problems import Role
from inventory.shop.models import Counter, Person, Shop
from tests.benchmarks.loading import bulk_load
from tests.benchmarks.sheets import Sheets
from tests.benchmarks.world import PERSON, Facts, World

NOUNS = {"place": 1, "supplier": 1, "material": 25}


def build(movements: int) -> Facts:
    """A shop with so many movements, the last of them yesterday. The database is migrated and holds nothing yet."""
    Shop.objects.create(pk=1, name="Kelp Lane Tops", currency="USD", time_zone="UTC")
    Person.objects.create_user(username="bench-owner", password=None, role=Role.OWNER, pk=PERSON)
    sheets = Sheets()
    last_day = datetime.now(UTC).date() - timedelta(days=1)
    world = World(sheets, movements, last_day)
    with bulk_load(sheets.all()):
        for _ in world.tell():
            sheets.flush()
    counted = NOUNS | {noun: world.count[noun] for noun in ("lot", "delivery", "customer", "job", "piece", "pour")}
    counted["blend"] = world.count.get("blend", 0)
    Counter.objects.bulk_create(Counter(noun=noun, last=last) for noun, last in counted.items())
    return world.facts()
