"""The one kind of error that a client sees, and the names of the roles.

An action raises a subclass of `Problem`; `rest.errors` turns it into an RFC 9457 answer. Each subclass has a slug that
clients switch on, and says what is wrong, by how much, and in `remedies` what would help.
"""

from collections.abc import Mapping, Sequence
from typing import Any, ClassVar

from django.db.models import TextChoices


class Role(TextChoices):
    """What a person may do, from least to most."""

    VIEWER = "viewer", "Viewer"
    CREW = "crew", "Crew"
    OWNER = "owner", "Owner"

    @property
    def rank(self) -> int:
        return list(Role).index(self)

    def covers(self, needed: "Role") -> bool:
        """Whether a person of this role may do what needs that one."""
        return self.rank >= needed.rank


class Problem(Exception):
    """Something the client can mend; nothing was written.

    detail: a sentence that says what is wrong and how to mend it.
    remedies: what would help, each a dict with at least "kind" and "text".
    errors: for a bad body, a list of {"pointer": JSON pointer, "detail": sentence}.
    extra: further members of the answer, JSON values.
    """

    slug: ClassVar[str] = "bad-request"
    title: ClassVar[str] = "The request cannot be carried out"
    status: ClassVar[int] = 400

    def __init__(
        self,
        detail: str,
        *,
        remedies: Sequence[Mapping[str, Any]] = (),
        errors: Sequence[Mapping[str, Any]] = (),
        **extra: Any,
    ) -> None:
        super().__init__(detail)
        self.detail = detail
        self.remedies = [dict(remedy) for remedy in remedies]
        self.errors = [dict(error) for error in errors]
        self.extra = extra


class BadBody(Problem):
    """The body has fields to mend; each stands in `errors` with its JSON pointer."""

    slug = "bad-body"
    title = "Some fields need mending"
    status = 400


class Unprocessable(Problem):
    """The body is well-formed, yet the shop's rules do not allow it."""

    slug = "not-allowed-by-the-rules"
    title = "The shop's rules do not allow this"
    status = 422


class Conflict(Problem):
    """The thing is not in a state in which this can be done."""

    slug = "conflict"
    title = "This cannot be done now"
    status = 409


class Busy(Conflict):
    """Somebody else holds the lock; the same call may go through in a moment."""

    slug = "busy"
    title = "Somebody else is changing the same stock"


class Stale(Problem):
    """The record was changed since it was read."""

    slug = "stale"
    title = "Somebody changed this since you read it"
    status = 412


class BadJSON(Problem):
    """The body is not JSON that can be kept: broken, too deep, or with a number or text out of bounds."""

    slug = "bad-json"
    title = "The body cannot be read"
    status = 400


class TooLarge(Problem):
    """The body is larger than the server reads."""

    slug = "too-large"
    title = "The body is too large"
    status = 413


class BadQuery(Problem):
    """A query parameter is unknown or its value cannot be used; `errors` names it as {"parameter", "detail"}."""

    slug = "bad-query"
    title = "Some query parameters need mending"
    status = 400


class KeyReused(Problem):
    """The Idempotency-Key belongs to another call."""

    slug = "key-reused"
    title = "This Idempotency-Key was used for something else"
    status = 422


class InUse(Conflict):
    """What was used is kept: it can be archived, not deleted."""

    slug = "in-use"
    title = "This was used and cannot be deleted"


class AlreadyExists(Conflict):
    """Another record bears what must be its own."""

    slug = "already-exists"
    title = "There is one like this already"
