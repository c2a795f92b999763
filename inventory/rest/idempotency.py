"""A POST that is sent twice is carried out once (draft-ietf-httpapi-idempotency-key-header).

The key's row is the first insert of the work's own transaction and carries the answer at its end: two statements
beside the work. A second caller waits at that insert, on PostgreSQL for the row, on SQLite for the write lock, and then
finds the answer; a wait over the lock time-out becomes 409 `busy`. An error rolls the row back with the work, so that
the same key may be tried again.
"""

import json
from collections.abc import Callable
from dataclasses import dataclass
from datetime import timedelta
from hashlib import sha256
from typing import Any

from django.db import connection, transaction
from django.http import Http404
from django.utils import timezone
from rest_framework.renderers import JSONRenderer
from rest_framework.request import Request
from rest_framework.response import Response

from inventory.rest.models import IdempotencyKey
from inventory.rest.permissions import role_of
from inventory.rest.problems import Busy, Conflict, KeyReused, Problem

HEADER = "Idempotency-Key"
REPLAYED = "Idempotency-Replayed"
KEPT_FOR = timedelta(days=30)
LONGEST_KEY = 255
LONGEST_PATH = 400


@dataclass(frozen=True)
class Call:
    """What a key stands for: who calls what with which body."""

    person: int
    role: str
    method: str
    path: str
    key: str
    body_hash: str


class BadKey(Problem):
    slug = "bad-idempotency-key"
    title = "The Idempotency-Key cannot be used"
    status = 400


class KeptAnswer(Response):
    """An answer whose text is already rendered, byte for byte what is kept."""

    def __init__(self, text: str, *, status: int, content_type: str, headers: dict[str, str]) -> None:
        super().__init__(json.loads(text) if text else None, status, headers=headers, content_type=content_type)
        self["Content-Type"] = content_type
        self.text = text

    @property
    def rendered_content(self) -> str:
        return self.text


def run_once(request: Request, work: Callable[[], Response]) -> Response:
    """Carry out the work in one transaction, once for each key; without a key just in one transaction.

    Raises BadKey, KeyReused, and whatever the work raises; then nothing is written.
    """
    call = call_of(request)
    with transaction.atomic():
        row = claim(call) if call else None
        if call and row is None:
            return replay(call)
        response = work()
        if response.status_code >= 400:
            transaction.set_rollback(True)
        elif row is not None:
            return keep(row, response)
    return response


def call_of(request: Request) -> Call | None:
    """The call that the request's key stands for; None where it has no key or nobody is signed in."""
    key = request.headers.get(HEADER)
    if key is None or not request.user.is_authenticated:
        return None
    if len(request.path) > LONGEST_PATH:
        raise Http404
    person: Any = request.user
    return Call(
        person=person.pk,
        role=role_of(person) or "",
        method=request.method or "",
        path=request.path,
        key=read_key(key),
        body_hash=body_hash(request.data),
    )


def read_key(header: str) -> str:
    """The key, as a structured-header string ("…") or bare. Raises BadKey."""
    key = header[1:-1] if len(header) >= 2 and header[0] == header[-1] == '"' else header
    if not 1 <= len(key) <= LONGEST_KEY or not all(" " <= letter <= "~" for letter in key):
        raise BadKey(f"An {HEADER} is 1 to {LONGEST_KEY} printable ASCII characters, such as a random UUID.")
    return key


def body_hash(body: Any) -> str:
    """SHA-256 of a body in canonical JSON: neither spacing nor the order of keys matters."""
    canonical = json.dumps(body, sort_keys=True, separators=(",", ":"), default=str)
    return sha256(canonical.encode()).hexdigest()


def claim(call: Call) -> int | None:
    """Insert the key's row and return its id; None where it was there already. One statement, which may wait."""
    now = connection.ops.adapt_datetimefield_value(timezone.now())
    with connection.cursor() as cursor:
        cursor.execute(
            "INSERT INTO rest_idempotencykey "
            "(person_id, role, method, path, key, body_hash, status, content_type, answer, created_at) "
            "VALUES (%s, %s, %s, %s, %s, %s, 0, '', '', %s) ON CONFLICT DO NOTHING RETURNING id",
            [call.person, call.role, call.method, call.path, call.key, call.body_hash, now],
        )
        row = cursor.fetchone()
    return None if row is None else int(row[0])


def keep(row: int, response: Response) -> KeptAnswer:
    """Write the answer to the key's row. One statement."""
    text = "" if response.data is None else JSONRenderer().render(response.data).decode()
    content_type = response.content_type or "application/json"
    IdempotencyKey.objects.filter(pk=row).update(status=response.status_code, content_type=content_type, answer=text)
    headers = {name: value for name, value in response.headers.items() if name != "Content-Type"}
    return KeptAnswer(text, status=response.status_code, content_type=content_type, headers=headers)


def replay(call: Call) -> KeptAnswer:
    """The first answer again. Raises KeyReused for another body, Conflict where the role sees less than then."""
    same = IdempotencyKey.objects.filter(person=call.person, method=call.method, path=call.path, key=call.key)
    kept = same.first()
    if kept is None:
        raise Busy("The first call with this key has just been forgotten. Send it again.")
    if kept.body_hash != call.body_hash:
        raise KeyReused(
            "This key came with another body before. Repeat that body, or take a new key for a new call.",
            remedies=[{"kind": "new_key", "text": "Send this body with a new Idempotency-Key."}],
        )
    if kept.role != call.role:
        raise Conflict("This was done already, while you had another role. Read the record to see it as it is now.")
    return KeptAnswer(kept.answer, status=kept.status, content_type=kept.content_type, headers={REPLAYED: "true"})


def forget_old_keys() -> int:
    """Delete the keys older than 30 days and say how many there were. One statement."""
    forgotten, _ = IdempotencyKey.objects.filter(created_at__lt=timezone.now() - KEPT_FOR).delete()
    return forgotten
