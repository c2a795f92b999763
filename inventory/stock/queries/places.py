"""Places where stock lies."""

from django.db.models import QuerySet

from inventory.shop.numbers import next_number
from inventory.stock.models import Place


def places() -> QuerySet[Place]:
    return Place.objects.all()


def default_place() -> Place:
    """The place that is meant where none is named: the first that is not archived, made as "Shop" on first need."""
    place = Place.objects.filter(is_archived=False).order_by("id").first()
    return place or Place.objects.create(number=next_number("place"), name="Shop")
