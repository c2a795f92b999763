"""What is read of pours."""

from dataclasses import dataclass
from datetime import timedelta

from django.db.models import Count, Prefetch, Q, QuerySet, Sum, prefetch_related_objects
from django.shortcuts import get_object_or_404
from django.utils import timezone

from inventory.pours.models import Pour, PourStatus, Usage
from inventory.pours.reading import shown_pieces, shown_planned
from inventory.shop.clock import shop_day, shop_zone, start_of_day
from inventory.stock.models import Kind, Movement, Posting


def pours() -> QuerySet[Pour]:
    """Pours with place, who put them down, people and tops: three SQL statements, however many."""
    return Pour.objects.select_related("place", "by").prefetch_related("people", shown_pieces())


def usages() -> QuerySet[Usage]:
    """What went in, with the names to show and the money as it stands now."""
    return (
        Usage.objects.select_related("material", "lot", "place", "movement")
        .annotate(corrected=Sum("movement__corrections__value"))
        .order_by("position", "id")
    )


def shown(pour: Pour) -> Pour:
    """The pour with what its answer shows; what an action has just read or written is not read again."""
    live = usages().filter(is_taken_back=False)
    prefetch_related_objects(
        [pour], "people", shown_pieces(), shown_planned(), Prefetch("usages", live, to_attr="shown_usages")
    )
    return pour


def get_pour(pk: int) -> Pour:
    """The pour with what its answer shows. Raises Http404."""
    return shown(get_object_or_404(Pour.objects.select_related("place", "by"), pk=pk))


@dataclass(frozen=True, slots=True)
class Act:
    """One posting of a pour. what: completed | added | corrected | undone | cost_changed."""

    posting: Posting
    what: str


def acts(pour: Pour) -> list[Act]:
    """What was booked for a pour, in order. One SQL statement."""
    own = Q(movements__cause=pour.pk)
    postings = (
        Posting.objects.filter(pk__in=Movement.objects.filter(cause=pour.pk).values("posting"))
        .select_related("by")
        .annotate(taken_back=Count("movements", filter=own & Q(movements__corrects__isnull=False)))
        .order_by("pk")
    )
    found: list[Act] = []
    for posting in postings:
        found.append(Act(posting, word_for(posting, is_first=not found)))
    return found


def word_for(posting: Posting, *, is_first: bool) -> str:
    match posting.kind:
        case Kind.REVERSED:
            return "undone"
        case Kind.USED:
            is_correction: bool = posting.taken_back > 0  # type: ignore[attr-defined]
            return "corrected" if is_correction else "completed" if is_first else "added"
        case _:
            return "cost_changed"


def same_pours(pour: Pour) -> list[Pour]:
    """Pours that may be this very one: the same coat on one of its tops on the same day, put down by somebody else.

    Two SQL statements.
    """
    zone = shop_zone()
    day = shop_day(pour.poured_at or pour.planned_for or timezone.now(), zone)
    start, end = start_of_day(day, zone), start_of_day(day + timedelta(days=1), zone)
    poured = Q(poured_at__gte=start, poured_at__lt=end)
    planned = Q(poured_at=None, planned_for__gte=start, planned_for__lt=end)
    undated = Q(poured_at=None, planned_for=None, made_at__gte=start, made_at__lt=end)
    return list(
        Pour.objects.filter(poured | planned | undated, layer=pour.layer)
        .filter(status__in=[PourStatus.PLANNED, PourStatus.COMPLETED])
        .filter(pour_pieces__piece__in=[row.piece_id for row in pour.shown_pieces])
        .exclude(pk=pour.pk)
        .exclude(by=pour.by)
        .select_related("by")
        .order_by("pk")
        .distinct()
    )


def key_of(pk: int) -> Pour:
    """A pour by its key alone, for actions, which read it under lock."""
    return Pour(pk=pk)
