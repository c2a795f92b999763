"""Signing in and out in the browser, with a brake on guessing."""

from axes.helpers import get_cool_off
from django.contrib.auth import authenticate, login
from django.http import HttpRequest

from inventory.shop.models import Person
from inventory.shop.problems import SignInRefused, TooManyTries


def sign_in(request: HttpRequest, *, username: str, password: str) -> Person:
    """Open a session for whoever knows the password.

    Raises SignInRefused, in the same words for an unknown username, a wrong password and ended access, and TooManyTries
    after several failures in a row from one address.
    """
    person = authenticate(request, username=username, password=password)
    if getattr(request, "axes_locked_out", False):
        request.axes_locked_out = False  # type: ignore[attr-defined]  # the answer below says it; nothing replaces it
        raise too_many_tries(request)
    if not isinstance(person, Person):
        raise SignInRefused("That username and password do not match. Check both; capitals count.")
    login(request, person)
    return person


def too_many_tries(request: HttpRequest) -> TooManyTries:
    wait = get_cool_off(request)
    seconds = int(wait.total_seconds()) if wait else 0
    return TooManyTries(
        f"Too many wrong passwords for this username. Wait {round(seconds / 60)} minutes, or ask an owner for another.",
        retry_after_seconds=seconds,
    )
