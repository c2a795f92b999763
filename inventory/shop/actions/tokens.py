"""Tokens with which scripts sign in."""

from django.db import transaction
from rest_framework.authtoken.models import Token

from inventory.rest.problems import Conflict
from inventory.shop.change_log import log_changes
from inventory.shop.editing import lock_for_edit
from inventory.shop.models import Person


@transaction.atomic
def issue_token(*, person: Person, by: Person | None) -> str:
    """Give somebody a new token; the one they had ends. It is shown this once.

    by: the acting owner, None on the command line. Raises Conflict for somebody who may not sign in.
    """
    locked = lock_for_edit(person)
    if not locked.is_active:
        raise Conflict(f"{locked} may not sign in. Let them in again first.")
    Token.objects.filter(user=locked).delete()
    token = Token.objects.create(user=locked)
    log_changes(record=locked, changes={"token": ("", "issued")}, by=by or locked)
    return str(token.key)


@transaction.atomic
def withdraw_token(*, person: Person, by: Person) -> Person:
    """End somebody's token. Where there is none, nothing happens."""
    locked = lock_for_edit(person)
    ended, _ = Token.objects.filter(user=locked).delete()
    if ended:
        log_changes(record=locked, changes={"token": ("issued", "withdrawn")}, by=by)
    return locked
