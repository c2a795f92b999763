"""What is measured in one world: our actions and queries, the bare SQL beside them, and the way over HTTP."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from uuid import uuid4

from django.conf import settings
from rest_framework.authtoken.models import Token
from rest_framework.test import APIClient

from inventory.calc.quantities import Typed
from inventory.jobs.models import Piece
from inventory.pours.actions import complete_pour, plan_pour
from inventory.pours.entered import Account, Entered, PieceShare, Plan
from inventory.pours.models import Layer
from inventory.pours.queries import key_of
from inventory.shop.models import Person
from tests.benchmarks.bare_pour import BarePour
from tests.benchmarks.timing import medians
from tests.benchmarks.world import LINES, PERSON, Facts


@dataclass(frozen=True, slots=True)
class Measured:
    """Milliseconds, medians; None where there is no such way to do it."""

    name: str
    ours: float | None
    bare: float | None
    http: float | None


class Measuring:
    """One world's measurements, one after the other."""

    def __init__(self, facts: Facts, *, repeat: int) -> None:
        self.facts, self.repeat = facts, repeat
        self.by = Person.objects.get(pk=PERSON)
        token, _ = Token.objects.get_or_create(user=self.by)
        self.client = APIClient()
        self.client.credentials(HTTP_AUTHORIZATION=f"Token {token.key}")
        settings.ALLOWED_HOSTS = ["testserver"]

    def all(self) -> Iterator[Measured]:
        yield self.complete()

    # Completing a pour

    def complete(self) -> Measured:
        turns = self.repeat + 1
        plans = iter([self.plan() for _ in range(turns * 3)])
        bare = BarePour()
        taken = medians(
            {
                "ours": lambda: complete_pour(pour=key_of(next(plans)), account=Account(), by=self.by),
                "bare": lambda: bare.complete(next(plans)),
                "http": lambda: self.post(f"/api/pours/{next(plans)}/complete/", {}),
            },
            repeat=self.repeat,
        )
        return Measured("complete a 12-line pour", **taken)

    def plan(self) -> int:
        """A pour of 12 lines planned on the last job's tops."""
        tops = Piece.objects.order_by("-id").values_list("pk", flat=True)[:2]
        usages = [
            Entered(material=material, quantity=Typed(Fraction(40), "ml"), is_waste=material == LINES)
            for material in range(1, LINES + 1)
        ]
        pieces = [PieceShare(top) for top in tops]
        return plan_pour(plan=Plan(pieces=pieces, layer=Layer.FLOOD_COAT, usages=usages), by=self.by).pk

    def post(self, path: str, body: dict[str, object]) -> None:
        answer = self.client.post(path, body, headers={"Idempotency-Key": str(uuid4())})
        if answer.status_code >= 400:
            raise RuntimeError(f"{path} answered {answer.status_code}: {answer.content[:300]!r}")

    def get(self, path: str) -> None:
        answer = self.client.get(path)
        if answer.status_code >= 400:
            raise RuntimeError(f"{path} answered {answer.status_code}: {answer.content[:300]!r}")
