"""What is written on the pour itself when something happened to it."""

from collections.abc import Sequence

from inventory.pours.booking import owners_words, waits_for_owner
from inventory.pours.entered import Account
from inventory.pours.models import Pour, Usage
from inventory.pours.reading import read_people
from inventory.pours.remarks import kept
from inventory.shop.models import Person
from inventory.shop.rows import update_record

WRITTEN = (
    "status",
    "place",
    "layer",
    "is_redo",
    "planned_for",
    "poured_at",
    "conditions",
    "ticks",
    "note",
    "reason",
    "owner_reason",
    "needs_owner_reason",
    "version",
)


def note_seen(pour: Pour, account: Account) -> None:
    """Take over who was there and what was seen, where it was given. The pour is saved by the caller."""
    if account.people is not None:
        pour.people.set(read_people(account.people))
    if account.conditions is not None:
        pour.conditions = kept(account.conditions)
    if account.ticks is not None:
        pour.ticks = kept(account.ticks)
    if account.note is not None:
        pour.note = account.note


def mark_waiting(pour: Pour, usages: Sequence[Usage], *, by: Person) -> None:
    """Mark that the owner is asked why something expired or on hold went in, or keep the owner's own words of it."""
    pour.needs_owner_reason = pour.needs_owner_reason or waits_for_owner(usages, by=by)
    add_owner_reason(pour, owners_words(usages, by=by))


def add_owner_reason(pour: Pour, words: str) -> None:
    pour.owner_reason = "\n".join(part for part in (pour.owner_reason, words) if part)


def save_next_version(pour: Pour) -> None:
    pour.version += 1
    update_record(pour, WRITTEN)
