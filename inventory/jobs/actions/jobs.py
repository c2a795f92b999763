"""Jobs: making, editing, finishing, handing over, re-opening, deleting."""

from collections.abc import Mapping, Sequence
from datetime import date
from typing import Any

from django.db import transaction

from inventory.calc.surfaces import CountingRule
from inventory.jobs.actions.customers import add_customer
from inventory.jobs.actions.pieces import insert_pieces
from inventory.jobs.actions.records import change, delete, keep
from inventory.jobs.models import Customer, Job, Purpose
from inventory.jobs.problems import JobFinished, JobNotFinished
from inventory.jobs.shapes import PieceDraft
from inventory.rest.problems import Unprocessable
from inventory.shop.change_log import log_added, log_changes
from inventory.shop.clock import InTheFuture, today
from inventory.shop.editing import lock_for_edit
from inventory.shop.models import Person, Shop
from inventory.shop.numbers import next_number


@transaction.atomic
def make_job(
    *,
    customer: Customer | Mapping[str, str],
    title: str,
    purpose: str = Purpose.CUSTOMER,
    site: str = "",
    note: str = "",
    due_on: date | None = None,
    rule: CountingRule | None = None,
    pieces: Sequence[PieceDraft] = (),
    by: Person,
) -> Job:
    """Make a job with its pieces, for a customer on record or a new one.

    customer: a Customer, or the arguments of `add_customer`.
    rule: which faces count as area, kept by the job; the shop's own at this moment where none is given.
    Raises UnmeasurablePieces.
    """
    if isinstance(customer, Mapping):
        customer = add_customer(**customer, by=by)
    rule = rule or shop_rule()
    job = Job.objects.create(
        customer=customer,
        title=title,
        purpose=purpose,
        site=site,
        note=note,
        due_on=due_on,
        counts_top=rule.counts_top,
        counts_edges=rule.counts_edges,
        counts_splash=rule.counts_splash,
        deducts_cutouts=rule.deducts_cutouts,
        number=next_number("job"),
    )
    log_added(record=job, by=by)
    insert_pieces(job, pieces)
    return job


def shop_rule() -> CountingRule:
    """Which faces the shop counts as area at this moment. One SQL statement."""
    fields = ("counts_top", "counts_edges", "counts_splash", "deducts_cutouts")
    kept = Shop.objects.values(*fields).first()
    return CountingRule(**kept) if kept else CountingRule()


@transaction.atomic
def edit_job(*, job: Job, changes: Mapping[str, Any], by: Person) -> Job:
    """Change a job's customer, title, purpose, site, note or due date."""
    return change(job, changes=changes, by=by)


@transaction.atomic
def finish_job(*, job: Job, finished_on: date, by: Person) -> Job:
    """Say that all tops of a job are done: it counts in that month. Raises JobFinished, InTheFuture."""
    job = lock_for_edit(job)
    if job.finished_on is not None:
        raise JobFinished(
            f"Job {job.number} was finished on {job.finished_on}. Re-open it to finish it on another day.",
            job=job.pk,
        )
    refuse_future_day(finished_on, field="finished_on")
    return keep(job, {"finished_on": finished_on}, by=by)


@transaction.atomic
def reopen_job(*, job: Job, reason: str, by: Person) -> Job:
    """Take back that a job is finished, and with it that it was handed over. Raises JobNotFinished."""
    job = lock_for_edit(job)
    refuse_unfinished(job)
    changes = {"finished_on": None, "handed_over_on": None}
    log_changes(record=job, changes={"reopened_because": (None, reason)}, by=by)
    return keep(job, changes, by=by)


@transaction.atomic
def hand_over_job(*, job: Job, handed_over_on: date, by: Person) -> Job:
    """Say when the customer got a finished job; a later word replaces an earlier.

    Raises JobNotFinished, InTheFuture, Unprocessable for a day before the job was finished.
    """
    job = lock_for_edit(job)
    refuse_unfinished(job)
    refuse_future_day(handed_over_on, field="handed_over_on")
    if job.finished_on is not None and handed_over_on < job.finished_on:
        raise Unprocessable(
            f"Job {job.number} was finished on {job.finished_on}; it cannot have been handed over on {handed_over_on}.",
            errors=[{"pointer": "/handed_over_on", "detail": f"Give {job.finished_on} or a later day."}],
        )
    return keep(job, {"handed_over_on": handed_over_on}, by=by)


@transaction.atomic
def delete_job(*, job: Job, by: Person) -> None:
    """Delete a job, with its pieces, on which nothing was planned or poured. Raises InUse."""
    instead = "Archive the job instead, so that it is offered no more."
    for piece in job.pieces.all():
        delete(piece, archive_instead=instead, by=by)
    delete(job, archive_instead=instead, by=by)


def refuse_unfinished(job: Job) -> None:
    if job.finished_on is None:
        raise JobNotFinished(
            f"Job {job.number} is not finished yet.",
            remedies=[{"kind": "finish", "text": "Finish the job first.", "call": f"/api/jobs/{job.pk}/finish/"}],
        )


def refuse_future_day(day: date, *, field: str) -> None:
    now = today()
    if day > now:
        raise InTheFuture(
            f"{day} has not come yet: today is {now}.",
            errors=[{"pointer": f"/{field}", "detail": f"Give {now} or an earlier day."}],
        )
