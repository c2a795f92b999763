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
from inventory.reports.queries.cost import cost_per_sqft
from inventory.reports.queries.cost_sums import GroupBy, Question
from inventory.reports.queries.sources import sources_of_job
from inventory.reports.queries.today import needs_a_hand
from inventory.reports.queries.uses import uses_of_lot
from inventory.shop.models import Person
from tests.benchmarks.bare_pour import BarePour
from tests.benchmarks.bare_reads import BareReads
from tests.benchmarks.timing import Act, medians
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
        yield self.uses()
        yield self.sources()
        yield self.monthly()
        yield self.today()

    # Completing a pour

    def complete(self) -> Measured:
        turns = self.repeat + 1
        plans = iter([self.plan(turn) for turn in range(turns * 3)])
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

    def plan(self, turn: int) -> int:
        """A pour of 12 lines planned on the tops of one of the last jobs, another one each turn."""
        first = turn * 2 % Piece.objects.count()
        tops = Piece.objects.order_by("-id").values_list("pk", flat=True)[first : first + 2]
        usages = [
            Entered(material=material, quantity=Typed(Fraction(40), "ml"), is_waste=material == LINES)
            for material in range(1, LINES + 1)
        ]
        pieces = [PieceShare(top) for top in tops]
        return plan_pour(plan=Plan(pieces=pieces, layer=Layer.FLOOD_COAT, usages=usages), by=self.by).pk

    # Reading

    def uses(self) -> Measured:
        lot, bare = self.facts.big_lot, BareReads()
        return self.read(
            f"uses of the lot with {len(uses_of_lot(lot).pours):,} pours",
            lambda: uses_of_lot(lot),
            lambda: bare.uses_of_lot(lot),
            f"/api/lots/{lot}/uses/",
        )

    def sources(self) -> Measured:
        job, bare = self.facts.a_job, BareReads()
        return self.read(
            "sources of a job",
            lambda: sources_of_job(job),
            lambda: bare.sources_of_job(job),
            f"/api/jobs/{job}/sources/",
        )

    def monthly(self) -> Measured:
        bare = BareReads()
        return self.read(
            "cost per sq ft by month",
            lambda: cost_per_sqft(Question(group_by=GroupBy.MONTH)),
            bare.monthly_cost,
            "/api/reports/cost-per-sqft/?group_by=month",
        )

    def today(self) -> Measured:
        return self.read("today's page", lambda: needs_a_hand(is_owner=True), None, "/api/today/")

    def read(self, name: str, ours: Act, bare: Act | None, path: str) -> Measured:
        acts = {"ours": ours, "http": lambda: self.get(path)} | ({"bare": bare} if bare else {})
        taken = medians(acts, repeat=max(3, self.repeat // 3))
        return Measured(name, taken["ours"], taken.get("bare"), taken["http"])

    def post(self, path: str, body: dict[str, object]) -> None:
        answer = self.client.post(path, body, headers={"Idempotency-Key": str(uuid4())})
        if answer.status_code >= 400:
            raise RuntimeError(f"{path} answered {answer.status_code}: {answer.content[:300]!r}")

    def get(self, path: str) -> None:
        answer = self.client.get(path)
        if answer.status_code >= 400:
            raise RuntimeError(f"{path} answered {answer.status_code}: {answer.content[:300]!r}")
