"""What is measured in one world: our actions and queries, the bare SQL beside them, and the way over HTTP."""

from collections.abc import Iterator
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
from tests.benchmarks.aims import MONTHLY, POUR, SOURCES, TODAY, USES
from tests.benchmarks.bare_pour import BarePour
from tests.benchmarks.bare_reads import BareReads
from tests.benchmarks.table import Measured
from tests.benchmarks.timing import Act, medians
from tests.benchmarks.world import LINES, PERSON, Facts


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
        return Measured(POUR, "", **taken)

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
        note = f"{len(uses_of_lot(lot).pours):,} pours"
        path = f"/api/lots/{lot}/uses/"
        return self.read(USES, note, lambda: uses_of_lot(lot), path, lambda: bare.uses_of_lot(lot))

    def sources(self) -> Measured:
        job, bare = self.facts.deep_job, BareReads()
        note = f"{len(sources_of_job(job).rows):,} lots"
        path = f"/api/jobs/{job}/sources/"
        return self.read(SOURCES, note, lambda: sources_of_job(job), path, lambda: bare.sources_of_job(job))

    def monthly(self) -> Measured:
        question = Question(group_by=GroupBy.MONTH)
        note = f"{len(cost_per_sqft(question).rows)} months"
        path = "/api/reports/cost-per-sqft/?group_by=month"
        return self.read(MONTHLY, note, lambda: cost_per_sqft(question), path, BareReads().monthly_cost)

    def today(self) -> Measured:
        note = f"{len(needs_a_hand(is_owner=True).rows)} rows"
        return self.read(TODAY, note, lambda: needs_a_hand(is_owner=True), "/api/today/")

    def read(self, name: str, note: str, ours: Act, path: str, bare: Act | None = None) -> Measured:
        acts = {"ours": ours, "http": lambda: self.get(path)} | ({"bare": bare} if bare else {})
        taken = medians(acts, repeat=max(5, self.repeat // 3))
        return Measured(name, note, taken["ours"], taken.get("bare"), taken["http"])

    def post(self, path: str, body: dict[str, object]) -> None:
        answer = self.client.post(path, body, headers={"Idempotency-Key": str(uuid4())})
        if answer.status_code >= 400:
            raise RuntimeError(f"{path} answered {answer.status_code}: {answer.content[:300]!r}")

    def get(self, path: str) -> None:
        answer = self.client.get(path)
        if answer.status_code >= 400:
            raise RuntimeError(f"{path} answered {answer.status_code}: {answer.content[:300]!r}")
