"""In and out: the ledger's lines and their postings, to be read."""

from django.db.models import Prefetch, QuerySet

from inventory.stock.models import Movement, Posting


def movements() -> QuerySet[Movement]:
    """Lines with their posting, who made it, lot, material and place. One SQL statement."""
    return Movement.objects.select_related("posting__by", "lot", "material", "place")


def postings() -> QuerySet[Posting]:
    """Postings with who made them and their lines. Two SQL statements."""
    lines = Movement.objects.select_related("lot", "material", "place").order_by("id")
    return Posting.objects.select_related("by").prefetch_related(Prefetch("movements", lines))
