"""Who is acting."""

from rest_framework.exceptions import NotAuthenticated
from rest_framework.request import Request

from inventory.shop.models import Person


def person_of(request: Request) -> Person:
    """The person who sent a request that needs one. Raises NotAuthenticated (401) where nobody is signed in."""
    if not isinstance(request.user, Person):
        raise NotAuthenticated
    return request.user
