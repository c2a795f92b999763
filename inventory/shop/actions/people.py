"""Add people, change their role and access, give them passwords."""

from typing import Any, TypedDict, Unpack

from django.contrib.auth.password_validation import validate_password
from django.contrib.auth.validators import UnicodeUsernameValidator
from django.core.exceptions import ValidationError
from django.db import IntegrityError, transaction
from rest_framework.authtoken.models import Token

from inventory.rest.problems import BadBody, Role
from inventory.shop.change_log import log_added, log_changes
from inventory.shop.editing import edit, lock_for_edit
from inventory.shop.models import Person
from inventory.shop.problems import LastOwner, bad_field, bad_fields

LOGGED = ("username", "name", "email", "role", "is_active")


class PersonFields(TypedDict, total=False):
    username: str
    name: str
    email: str
    role: str
    is_active: bool


@transaction.atomic
def add_person(
    *,
    username: str,
    name: str,
    role: str = Role.VIEWER,
    email: str = "",
    password: str | None = None,
    by: Person | None,
) -> Person:
    """Let somebody new sign in. Without a password they can't yet, except by token.

    by: the acting owner; None for the first person and for the command line.
    Raises BadBody for a username that cannot be or is taken, and for a password that is easy to guess.
    """
    checked_username(username)
    person = Person(username=username, name=name, email=email)
    if password is not None:
        checked_password(password, person)
    try:
        with transaction.atomic():
            person = Person.objects.create_user(username, email, password, name=name, role=Role(role))
    except IntegrityError as error:
        raise taken(username) from error
    log_added(record=person, by=by or person)
    return person


@transaction.atomic
def change_person(*, person: Person, by: Person, **changes: Unpack[PersonFields]) -> Person:
    """Change somebody's name, username, address, role or access. Ending their access takes their token too.

    Raises LastOwner where nobody would be left who is an owner and may sign in, BadBody for a username that cannot be
    or is taken.
    """
    owners = lock_owners()
    if steps_down(changes) and owners == [person.pk]:
        raise LastOwner(
            f"{person} is the only owner who can sign in. Make somebody else an owner first.",
            remedies=[{"kind": "add_owner", "text": "Make somebody else an owner, then change this."}],
        )
    locked = lock_for_edit(person)
    if changes.get("username", locked.username) != locked.username:
        checked_username(changes["username"], of=locked)
    given: dict[str, Any] = dict(changes)
    if "role" in changes:
        is_owner = changes["role"] == Role.OWNER
        given |= {"is_staff": is_owner, "is_superuser": is_owner}
    if changes.get("is_active") is False:
        Token.objects.filter(user=locked).delete()
    try:
        with transaction.atomic():
            return edit(locked, given, by=by, logged=LOGGED)
    except IntegrityError as error:
        raise taken(changes.get("username", "")) from error


def lock_owners() -> list[int]:
    """The ids of the owners who may sign in, locked in order: two of them can't both step down at once."""
    owners = Person.objects.select_for_update(no_key=True).filter(role=Role.OWNER, is_active=True)
    return [owner.pk for owner in owners.order_by("id")]


def steps_down(changes: PersonFields) -> bool:
    return changes.get("role", Role.OWNER) != Role.OWNER or not changes.get("is_active", True)


@transaction.atomic
def set_password(*, person: Person, password: str, by: Person | None, pointer: str = "/password") -> Person:
    """Give somebody a new password; their other sessions end.

    by: the acting owner, the person themself, or None on the command line.
    Raises BadBody at `pointer` for a password that is short, common or like their name.
    """
    checked_password(password, person, pointer=pointer)
    locked = lock_for_edit(person)
    locked.set_password(password)
    locked.save(update_fields=["password"])
    log_changes(record=locked, changes={"password": ("", "changed")}, by=by or locked)
    return locked


@transaction.atomic
def change_own_password(*, person: Person, current: str, password: str) -> Person:
    """Somebody gives themself a new password. Raises BadBody where the current one is wrong, or the new one weak."""
    if not person.check_password(current):
        raise bad_field("/current", "That is not your current password.")
    return set_password(person=person, password=password, by=person)


def checked_username(username: str, *, of: Person | None = None) -> None:
    """Raise BadBody for a username that has odd characters, or differs from another's in capitals alone."""
    try:
        UnicodeUsernameValidator()(username)
    except ValidationError as error:
        raise bad_field("/username", "Use letters, digits and @ . + - _ in a username, without spaces.") from error
    others = Person.objects.filter(username__iexact=username)
    if (others.exclude(pk=of.pk) if of else others).exists():
        raise taken(username)


def taken(username: str) -> BadBody:
    return bad_field("/username", f"Somebody has the username {username} already. Choose another.")


def checked_password(password: str, person: Person, *, pointer: str = "/password") -> None:
    try:
        validate_password(password, person)
    except ValidationError as error:
        raise bad_fields([(pointer, message) for message in error.messages]) from error
