"""JSON pointers (RFC 6901) to the members of a body."""

from collections.abc import Iterator, Sequence
from typing import Any

from rest_framework.settings import api_settings

ONE_OF = "one_of:"


def pointer(path: Sequence[str | int]) -> str:
    """The JSON pointer of a path; the whole body is the empty string.

    >>> pointer(["lines", 2, "a/b"])
    '/lines/2/a~1b'
    """
    return "".join("/" + str(step).replace("~", "~0").replace("/", "~1") for step in path)


def one_of(choices: Sequence[str]) -> str:
    """The error code that says what would be accepted instead; the row then has `choices`."""
    return ONE_OF + ",".join(choices)


def pointed_errors(detail: Any, path: tuple[str | int, ...] = ()) -> Iterator[dict[str, Any]]:
    """Flatten the nested detail of a serializer's ValidationError into {"pointer", "detail"} rows, in body order."""
    if isinstance(detail, dict):
        for key, inner in detail.items():
            is_about_the_whole = key == api_settings.NON_FIELD_ERRORS_KEY
            yield from pointed_errors(inner, path if is_about_the_whole else (*path, key))
    elif isinstance(detail, (list, tuple)):
        for index, inner in enumerate(detail):
            is_member = isinstance(inner, (dict, list, tuple))
            yield from pointed_errors(inner, (*path, index) if is_member else path)
    else:
        row: dict[str, Any] = {"pointer": pointer(path), "detail": str(detail)}
        code = getattr(detail, "code", None) or ""
        if code.startswith(ONE_OF):
            row["choices"] = code.removeprefix(ONE_OF).split(",")
        yield row
