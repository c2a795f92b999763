"""Pieces: adding them to a job, measuring them again, scrapping, deleting."""

from collections.abc import Mapping, Sequence
from typing import Any

from django.db import transaction

from inventory.calc.surfaces import Fault, UnmeasurablePiece
from inventory.jobs.actions.records import delete, keep
from inventory.jobs.models import Job, Piece
from inventory.jobs.problems import JobFinished, PieceNotScrapped, PieceScrapped, UnmeasurablePieces
from inventory.jobs.shapes import MEASURE_KEYS, PieceDraft, areas, changed_shape, counting_rule, kept_shape
from inventory.shop.change_log import log_changes
from inventory.shop.editing import lock_for_edit
from inventory.shop.models import Person
from inventory.shop.numbers import next_number


@transaction.atomic
def add_pieces(*, job: Job, pieces: Sequence[PieceDraft], by: Person) -> list[Piece]:
    """Add pieces to a job that is not finished, measured by the job's own rule.

    A draft with a count above 1 makes so many pieces, their names numbered.
    Raises UnmeasurablePieces, JobFinished.
    """
    job = lock_for_edit(job)
    if job.finished_on is not None:
        raise JobFinished(
            f"Job {job.number} was finished on {job.finished_on}; it takes no more pieces.",
            job=job.pk,
        )
    rows = insert_pieces(job, pieces, pointer="")
    log_changes(record=job, changes={"pieces": (None, ", ".join(row.name for row in rows))}, by=by)
    return rows


def insert_pieces(job: Job, drafts: Sequence[PieceDraft], *, pointer: str = "/pieces/{}") -> list[Piece]:
    """Write the pieces of a job in one statement. pointer: where a draft stands in the body, by its position."""
    rule = counting_rule(job)
    rows: list[Piece] = []
    faults: list[dict[str, str]] = []
    for position, draft in enumerate(drafts):
        try:
            faces = areas(draft.measures, rule)
        except UnmeasurablePiece as error:
            faults += told(error.faults, pointer.format(position))
            continue
        shape = kept_shape(draft.measures)
        names = [draft.name] if draft.count == 1 else [f"{draft.name} {which}" for which in range(1, draft.count + 1)]
        rows += [Piece(job=job, name=name, shape=shape, area_source=draft.area_source, **faces) for name in names]
    if faults:
        raise UnmeasurablePieces("A piece cannot be measured as it is given.", errors=faults)
    if rows:
        first = next_number("piece", count=len(rows))
        for offset, row in enumerate(rows):
            row.number = first + offset
    return Piece.objects.bulk_create(rows)


@transaction.atomic
def edit_piece(*, piece: Piece, changes: Mapping[str, Any], by: Person) -> Piece:
    """Change a piece's name, measures, or where its area comes from (quoted, templated, final).

    A new way of giving the top replaces the old one; cut-outs, edges and splash are each replaced where given.
    The areas before and after go to the change log. Raises Stale, UnmeasurablePieces.
    """
    piece = lock_for_edit(piece)
    fields = {field: after for field, after in changes.items() if field not in MEASURE_KEYS}
    if len(fields) < len(changes):
        shape = changed_shape(piece.shape, changes)
        try:
            fields |= {"shape": shape, **areas(shape, counting_rule(piece.job))}
        except UnmeasurablePiece as error:
            raise UnmeasurablePieces("The piece cannot be measured so.", errors=told(error.faults, "")) from error
    return keep(piece, fields, by=by)


@transaction.atomic
def scrap_piece(*, piece: Piece, reason: str, by: Person) -> Piece:
    """Say that a piece is lost: it keeps its cost and counts no more as finished area. Raises PieceScrapped."""
    piece = lock_for_edit(piece)
    if piece.is_scrapped:
        raise PieceScrapped(f"Top {piece.number} is scrapped already: {piece.scrapped_reason}")
    return keep(piece, {"is_scrapped": True, "scrapped_reason": reason}, by=by)


@transaction.atomic
def unscrap_piece(*, piece: Piece, by: Person) -> Piece:
    """Take back that a piece is lost. Raises PieceNotScrapped."""
    piece = lock_for_edit(piece)
    if not piece.is_scrapped:
        raise PieceNotScrapped(f"Top {piece.number} is not scrapped.")
    return keep(piece, {"is_scrapped": False, "scrapped_reason": ""}, by=by)


@transaction.atomic
def delete_piece(*, piece: Piece, by: Person) -> None:
    """Delete a piece on which nothing was planned or poured. Raises InUse."""
    delete(piece, archive_instead="Scrap the piece instead: it keeps its cost and counts no area.", by=by)


def told(faults: Sequence[Fault], pointer: str) -> list[dict[str, str]]:
    """The faults of a piece as the errors of a bad body, each with its JSON pointer."""
    return [{"pointer": f"{pointer}{fault.pointer}", "detail": fault.sentence} for fault in faults]
