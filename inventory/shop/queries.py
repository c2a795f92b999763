"""What is read of the shop, its people and its change log."""

from dataclasses import dataclass

from django.db.models import Exists, OuterRef, QuerySet
from rest_framework.authtoken.models import Token

from inventory.shop.models import Change, Person, Shop


def the_shop() -> Shop:
    """The shop's settings; before the set-up the defaults, not saved. One SQL statement."""
    return Shop.objects.first() or Shop(pk=1)


def needs_set_up() -> bool:
    """Whether there is nobody yet who could sign in. One SQL statement."""
    return not Person.objects.exists()


def people() -> QuerySet[Person]:
    """Everybody, each with `has_token`."""
    tokens = Token.objects.filter(user=OuterRef("pk"))
    return Person.objects.annotate(has_token=Exists(tokens)).order_by("name", "id")


def changes() -> QuerySet[Change]:
    """The change log, the newest first, with who made each change."""
    return Change.objects.select_related("by").order_by("-id")


@dataclass(frozen=True)
class Session:
    """What a page needs to know first: who is signed in, if anybody, and how the shop measures."""

    needs_set_up: bool
    person: Person | None
    shop: Shop


def session_of(person: Person | None) -> Session:
    """The session of a person who is signed in, or of nobody. Two SQL statements at most."""
    return Session(needs_set_up=person is None and needs_set_up(), person=person, shop=the_shop())
