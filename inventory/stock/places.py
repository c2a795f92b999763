"""Places that are offered and places that are not."""

from inventory.shop.problems import bad_field
from inventory.stock.models import Place


def refuse_archived_place(place: Place | None, *, pointer: str = "/place") -> None:
    """Raise BadBody for a place that is offered no longer."""
    if place is not None and place.is_archived:
        raise bad_field(pointer, f"{place} is archived. Put it back on the list first, or choose another place.")
