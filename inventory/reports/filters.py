"""The filters of the ledger's lines that need to know more than the ledger does."""

from typing import Any

import django_filters as filters
from django.db.models import Exists, OuterRef, Q, QuerySet

from inventory.jobs.models import Customer, Job, Piece
from inventory.pours.models import Pour, PourPiece
from inventory.stock.filters import MovementFilter, RecordFilter
from inventory.stock.models import Kind, Movement

INFLOW = (
    Q(kind__in=[Kind.RECEIVED, Kind.CHARGED])
    | Q(kind__in=[Kind.OPENED, Kind.BLENDED], into_lot=None)
    | Q(kind=Kind.COUNTED, quantity__gt=0, corrects=None)
)


class MovementFilters(MovementFilter):
    """pour, piece, job, customer: lines of the pours on them; a pour on tops of several jobs is in each of them whole.

    direction: `in` for what came into a lot, `out` for what left it, net of what took it back; a move is neither.
    """

    pour = filters.ModelChoiceFilter(field_name="cause", queryset=Pour.objects.all(), method="of_pour")
    piece = RecordFilter(queryset=Piece.objects.all(), method="of_pours_on")
    job = RecordFilter(queryset=Job.objects.all(), method="of_pours_on")
    customer = RecordFilter(queryset=Customer.objects.all(), method="of_pours_on")
    direction = filters.ChoiceFilter(choices=[("in", "Into lots"), ("out", "Out of lots")], method="one_way")

    def of_pour(self, movements: QuerySet[Movement], name: str, pour: Pour) -> QuerySet[Movement]:
        return movements.filter(cause=pour.pk)

    def of_pours_on(self, movements: QuerySet[Movement], name: str, record: Any) -> QuerySet[Movement]:
        path = {"piece": "piece", "job": "piece__job", "customer": "piece__job__customer"}[name]
        return movements.filter(Exists(PourPiece.objects.filter(pour=OuterRef("cause"), **{path: record})))

    def one_way(self, movements: QuerySet[Movement], name: str, direction: str) -> QuerySet[Movement]:
        return movements.filter(INFLOW) if direction == "in" else movements.exclude(INFLOW).exclude(kind=Kind.MOVED)
