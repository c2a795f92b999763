"""What is written on a lot: its number and dates, and remarks about it."""

from datetime import date, datetime
from typing import Any, TypedDict, Unpack

from django.db import transaction

from inventory.calc.allocation import days_after, use_by
from inventory.rest.etag import write_fields
from inventory.rest.problems import Unprocessable
from inventory.shop.change_log import log_changes_of
from inventory.shop.clock import InTheFuture, today
from inventory.shop.editing import lock_for_edit
from inventory.shop.models import Person
from inventory.shop.problems import bad_field
from inventory.stock.actions.bars import keep_statuses
from inventory.stock.bars import bars_of_numbers, bars_on, events_for, inherited
from inventory.stock.corrections import lots_made_from
from inventory.stock.models import Lot, LotNote, Movement, Origin, StatusEvent
from inventory.stock.problems import StillOnHold
from inventory.stock.taking import moment_of


class LotFields(TypedDict, total=False):
    """lot_number: the supplier's. Days: when made, when good for the last time, when opened."""

    lot_number: str
    made_on: date | None
    expires_on: date | None
    opened_on: date | None
    containers: int


@transaction.atomic
def note(*, lot: Lot, text: str, noted_at: datetime | None = None, by: Person) -> LotNote:
    """Keep a dated remark on a lot: cold and grainy, warmed clear. Raises InTheFuture."""
    return LotNote.objects.create(lot=lot, text=text, noted_at=moment_of(noted_at), by=by)


@transaction.atomic
def edit_lot(*, lot: Lot, by: Person, **fields: Unpack[LotFields]) -> Lot:
    """Mend a lot's number and dates; what was made of it follows, and the change log keeps what stood there before.

    A new `made_on` without an expiry gives one by the material's shelf life. Containers that were opened from the lot
    bear the same number and expiry; a house mix is good until the earliest of its inputs.
    Raises BadBody, InTheFuture, Unprocessable, StillOnHold for the number of a lot that is on hold or rejected.
    """
    locked = lock_for_edit(lot)
    changes: dict[str, Any] = dict(fields)
    _refuse_wrong_days(locked, changes)
    if changes.get("made_on") and "expires_on" not in changes and locked.expires_on is None:
        life = locked.material.shelf_life_days
        if life is not None:
            changes["expires_on"] = days_after(changes["made_on"], life)
    if "opened_on" in changes and changes["opened_on"] != locked.opened_on and locked.opened_on is None:
        raise bad_field("/opened_on", "It is closed. Open it first; after that its day can be mended here.")
    if "lot_number" in changes:
        _refuse_number(locked, changes["lot_number"])
        changes["is_own_number"] = locked.is_own_number and changes["lot_number"] == locked.lot_number
    before = {lot.pk: _shown(lot) for lot in [locked]}
    family = {row.pk: row for row in Lot.objects.filter(pk__in=lots_made_from([locked.pk])) if row.pk != locked.pk}
    before |= {pk: _shown(row) for pk, row in family.items()}
    renumbered = changes.get("lot_number", locked.lot_number) != locked.lot_number
    written = write_fields(locked, {**changes, "use_by": _use_by(locked, changes)})
    _follow(written, before, family)
    changed = [written, *family.values()]
    log_changes_of(
        [(row, {key: (before[row.pk][key], after) for key, after in _shown(row).items()}) for row in changed], by=by
    )
    if renumbered:
        _take_over_bars(changed, by=by)
    return written


def _shown(lot: Lot) -> dict[str, Any]:
    keys = ("lot_number", "made_on", "expires_on", "opened_on", "containers", "use_by")
    return {key: getattr(lot, key) for key in keys}


def _use_by(lot: Lot, changes: dict[str, Any]) -> date | None:
    return use_by(
        expires_on=changes.get("expires_on", lot.expires_on),
        opened_on=changes.get("opened_on", lot.opened_on),
        open_life_days=lot.open_life_days,
    )


def _refuse_wrong_days(lot: Lot, changes: dict[str, Any]) -> None:
    now = today()
    for field in ("made_on", "opened_on"):
        day = changes.get(field)
        if day is not None and day > now:
            raise InTheFuture(f"{day} has not come yet.", errors=[{"pointer": f"/{field}", "detail": "Mend the day."}])
    opened = changes.get("opened_on", lot.opened_on)
    if "opened_on" in changes and opened is None and lot.opened_on is not None:
        raise bad_field("/opened_on", "Undo the opening instead: then it is closed again.")
    if opened is not None and opened < lot.received_on:
        raise Unprocessable(
            f"Lot {lot.number} came in on {lot.received_on}; it cannot have been opened before.",
            errors=[{"pointer": "/opened_on", "detail": f"Give {lot.received_on} or a later day."}],
        )
    made, expires = changes.get("made_on", lot.made_on), changes.get("expires_on", lot.expires_on)
    if made is not None and expires is not None and expires < made:
        raise bad_field("/expires_on", f"It was made on {made}; it cannot have expired before.")


def _refuse_number(lot: Lot, number: str) -> None:
    if number != lot.lot_number and any(whole for _, whole in bars_on([lot.pk])[lot.pk]):
        raise StillOnHold(
            f"Number {lot.lot_number} is on hold or rejected. Say that this lot is OK again, then mend its number.",
            remedies=[{"kind": "release", "text": "Say that this lot is OK again."}],
        )


def _follow(root: Lot, before: dict[int, dict[str, Any]], family: dict[int, Lot]) -> None:
    """Give what was made of a lot the number and the dates that follow from it, in order of making."""
    if not family:
        return
    known = {root.pk: root, **family}
    sources: dict[int, set[int]] = {}
    for lot, into in Movement.objects.filter(into_lot__in=family).values_list("lot_id", "into_lot_id").distinct():
        sources.setdefault(into, set()).add(lot)
    outside = {lot for lots in sources.values() for lot in lots} - set(known)
    known |= Lot.objects.in_bulk(outside)
    for row in sorted(family.values(), key=lambda lot: lot.pk):  # a lot is made after those that it is made of
        if row.origin == Origin.OPENED:
            changes = _of_parent(row, known[row.opened_from_id or 0], before)
        else:
            changes = _of_inputs(row, [known[lot] for lot in sources[row.pk]], before)
        changes["use_by"] = use_by(
            expires_on=changes.get("expires_on", row.expires_on),
            opened_on=row.opened_on,
            open_life_days=row.open_life_days,
        )
        write_fields(row, changes)


def _of_parent(row: Lot, parent: Lot, before: dict[int, dict[str, Any]]) -> dict[str, Any]:
    old = before.get(parent.pk, {})
    changes: dict[str, Any] = {
        key: getattr(parent, key)
        for key in ("lot_number", "made_on", "expires_on")
        if key in old and getattr(row, key) == old[key]
    }
    if "lot_number" in changes:
        changes["is_own_number"] = parent.is_own_number
    return changes


def _of_inputs(row: Lot, inputs: list[Lot], before: dict[int, dict[str, Any]]) -> dict[str, Any]:
    then = [before[lot.pk]["use_by"] if lot.pk in before else lot.use_by for lot in inputs]
    if row.expires_on != min((day for day in then if day is not None), default=None):
        return {}  # somebody gave the mix a day of its own
    return {"expires_on": min((lot.use_by for lot in inputs if lot.use_by is not None), default=None)}


def _take_over_bars(lots: list[Lot], *, by: Person) -> None:
    """A lot that turns out to bear a number on hold is on hold, and so is what was made of it. lots: that lot first."""
    first = lots[0]
    bars = bars_of_numbers([(first.material_id, first.lot_number)]).get((first.material_id, first.lot_number), [])
    StatusEvent.objects.bulk_create(
        event for lot in lots for event in events_for(lot, inherited(bars, since=lot.received_at), by=by)
    )
    keep_statuses([lot.pk for lot in lots])
