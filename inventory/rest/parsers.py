"""JSON that the shop can keep: bounded in size, depth and numbers, and only text that both databases store.

A number with a fraction or exponent becomes a Decimal, never a float. What is refused says where it stands.
"""

import json
import re
from collections.abc import Iterator, Mapping
from decimal import Decimal
from typing import IO, Any, NoReturn

from django.conf import settings
from rest_framework.parsers import BaseParser

from inventory.rest.pointers import pointer
from inventory.rest.problems import BadJSON, TooLarge

MAX_DEPTH = 32
MAX_DIGITS = 40
MAX_EXPONENT = 30

# Strings are stepped over whole (possessive, so that a hostile body costs linear time); brackets stand alone.
STRING_OR_BRACKET = re.compile(r'"[^"\\]*+(?:\\.[^"\\]*+)*+(?:"|\\?\Z)|[\[{]|[\]}]', re.DOTALL)
ESCAPED_UNSTORABLE = re.compile(r"\\u(?:0000|[dD][89a-fA-F])")
UNSTORABLE = re.compile("[\x00\ud800-\udfff]")


class BoundedJSONParser(BaseParser):
    """Reads an `application/json` body. Raises BadJSON (400) and TooLarge (413), nothing else."""

    media_type = "application/json"

    def parse(
        self,
        stream: IO[Any],
        media_type: str | None = None,
        parser_context: Mapping[str, Any] | None = None,
    ) -> Any:
        limit = settings.DATA_UPLOAD_MAX_MEMORY_SIZE or 5 * 1024 * 1024
        raw = stream.read(limit + 1)
        if len(raw) > limit:
            raise TooLarge(f"A body may have at most {limit:,} bytes. Send it in parts.")
        try:
            text = raw.decode("utf-8-sig")
        except UnicodeDecodeError as error:
            raise BadJSON(f"The body is not UTF-8: byte {error.start} cannot be read.") from error
        return parse_json(text)


def parse_json(text: str) -> Any:
    """The value that a JSON text stands for. Raises BadJSON.

    >>> parse_json('{"quantity": 1.50}')
    {'quantity': Decimal('1.50')}
    """
    check_depth(text)
    try:
        value = json.loads(text, parse_float=decimal, parse_int=whole_number, parse_constant=refuse_constant)
    except json.JSONDecodeError as error:
        where = f"line {error.lineno}, column {error.colno}"
        raise BadJSON(f"The body is not JSON: {error.msg} at {where}.") from error
    if ESCAPED_UNSTORABLE.search(text):
        check_text(value)
    return value


def check_depth(text: str) -> None:
    depth = 0
    for token in STRING_OR_BRACKET.finditer(text):
        first = token.group()[0]
        if first in "[{":
            depth += 1
            if depth > MAX_DEPTH:
                raise BadJSON(f"The body is nested deeper than {MAX_DEPTH} levels. Send it flatter.")
        elif first in "]}":
            depth -= 1


def decimal(literal: str) -> Decimal:
    if len(literal) > 2 * MAX_DIGITS:
        refuse_number(literal)
    number = Decimal(literal)
    if len(number.as_tuple().digits) > MAX_DIGITS or abs(number.adjusted()) > MAX_EXPONENT:
        refuse_number(literal)
    return number


def whole_number(literal: str) -> int:
    if len(literal) > MAX_DIGITS:
        refuse_number(literal)
    return int(literal)


def refuse_number(literal: str) -> NoReturn:
    shown = literal if len(literal) <= 24 else literal[:20] + "…"
    raise BadJSON(f"The number {shown} is out of bounds: at most {MAX_DIGITS} digits, below 1e{MAX_EXPONENT}.")


def refuse_constant(literal: str) -> NoReturn:
    raise BadJSON(f"{literal} is not a number. Leave the field out or send a number.")


def check_text(value: Any) -> None:
    errors = [
        {"pointer": pointer(path), "detail": "The text has a NUL character or half of a surrogate pair. Take it out."}
        for path, text in texts(value, ())
        if UNSTORABLE.search(text)
    ]
    if errors:
        raise BadJSON("Some text cannot be kept.", errors=errors)


def texts(value: Any, path: tuple[str | int, ...]) -> Iterator[tuple[tuple[str | int, ...], str]]:
    """Every string of a JSON value with its path, the keys of its objects included."""
    if isinstance(value, str):
        yield path, value
    elif isinstance(value, dict):
        for key, member in value.items():
            yield path, key
            yield from texts(member, (*path, UNSTORABLE.sub("\ufffd", key)))
    elif isinstance(value, list):
        for index, member in enumerate(value):
            yield from texts(member, (*path, index))
