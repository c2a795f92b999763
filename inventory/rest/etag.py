"""Two people edit the same record: the second learns of it (RFC 9110, 8.8.3 and 13.1.1).

An editable record has a whole number `version` that grows with each change of an editable field. Its ETag is that
number; a change that says If-Match is made only if the number is still the same, compared inside the write.
"""

import re
from collections.abc import Mapping
from typing import Any, TypeVar

from django.db import models
from django.db.models import F
from rest_framework.request import Request

from inventory.rest.problems import Problem, Stale

TAGS = re.compile(r'\s*(?:W/)?"[\x21\x23-\x7e\x80-\xff]*"\s*(?:,\s*(?:W/)?"[\x21\x23-\x7e\x80-\xff]*"\s*)*')
OUR_TAG = re.compile(r'"(\d{1,18})"')

Record = TypeVar("Record", bound=models.Model)


class BadIfMatch(Problem):
    slug = "bad-if-match"
    title = "The If-Match header cannot be read"
    status = 400


def etag_of(record: Any) -> str:
    """The ETag of a record: its version, quoted."""
    return f'"{record.version}"'


def versions_in(request: Request) -> frozenset[int] | None:
    """The versions that If-Match allows; None where it is absent or `*`. A weak tag counts like a strong one, since
    a proxy that compresses weakens ours. Raises BadIfMatch."""
    header = request.headers.get("If-Match")
    if header is None or header.strip() == "*":
        return None
    if not TAGS.fullmatch(header):
        raise BadIfMatch('Send the ETag as it was given, in its quotes, such as If-Match: "3"; or leave it out.')
    return frozenset(int(version) for version in OUR_TAG.findall(header))


def check_version(record: Any, allowed: frozenset[int] | None) -> None:
    """Raise Stale unless the record, read under a lock, still has an allowed version."""
    if allowed is not None and record.version not in allowed:
        raise stale(record)


def stale(record: Any) -> Stale:
    return Stale(
        "Somebody changed it since you read it; nothing of yours was written. Read it again and repeat your change.",
        remedies=[{"kind": "read_again", "text": "Read it again: the answer has the new values and the new ETag."}],
        etag=etag_of(record),
    )


def locked(records: "models.QuerySet[Record]", **lookup: Any) -> Record:
    """The one record that the lookup finds, locked until the transaction ends. Raises its DoesNotExist.

    On SQLite the transaction itself is the lock.
    """
    return records.select_for_update(of=("self",), no_key=True).get(**lookup)


def write_fields(record: Record, values: Mapping[str, Any]) -> Record:
    """Write changed fields and the next version in one statement, and only over the version that was read.

    For the actions that change editable master data. values: field -> value; nothing is written where all are as they
    were. Raises Stale where somebody else was quicker.
    """
    changed = {name: value for name, value in values.items() if getattr(record, name) != value}
    if not changed:
        return record
    version: int = record.version  # type: ignore[attr-defined]
    rows = type(record)._default_manager.filter(pk=record.pk, version=version)
    if not rows.update(**changed, version=F("version") + 1):
        raise stale(record)
    for name, value in {**changed, "version": version + 1}.items():
        setattr(record, name, value)
    return record
