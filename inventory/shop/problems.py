"""What the shop's own rules refuse."""

from collections.abc import Sequence

from inventory.rest.problems import BadBody, Conflict, Problem


class AlreadySetUp(Conflict):
    slug = "already-set-up"
    title = "The shop is set up already"


class LastOwner(Conflict):
    slug = "last-owner"
    title = "A shop needs an owner who can sign in"


class SignInRefused(Problem):
    slug = "sign-in-refused"
    title = "Username and password do not match"
    status = 400


class TooManyTries(Problem):
    """`retry_after_seconds` says how long to wait."""

    slug = "too-many-tries"
    title = "Too many wrong passwords"
    status = 429

    @property
    def wait(self) -> int:
        """Seconds; the answer's Retry-After."""
        return int(self.extra["retry_after_seconds"])


def bad_fields(errors: Sequence[tuple[str, str]]) -> BadBody:
    """The refusal of a body some of whose fields break a rule. errors: (JSON pointer, sentence that says the mend)."""
    sentences = list(dict.fromkeys(sentence for _, sentence in errors))
    return BadBody(" ".join(sentences), errors=[{"pointer": where, "detail": detail} for where, detail in errors])


def bad_field(pointer: str, detail: str) -> BadBody:
    return bad_fields([(pointer, detail)])
