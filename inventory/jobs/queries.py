"""What is read of customers, jobs and pieces."""

from django.db.models import Prefetch, QuerySet
from django.shortcuts import get_object_or_404

from inventory.jobs.models import Customer, Job, Piece


def customers() -> QuerySet[Customer]:
    """Every customer."""
    return Customer.objects.all()


def jobs() -> QuerySet[Job]:
    """Jobs with their customer and their pieces: two SQL statements, however many."""
    return Job.objects.select_related("customer").prefetch_related(Prefetch("pieces", queryset=Piece.objects.all()))


def pieces() -> QuerySet[Piece]:
    """Pieces with their job and its customer."""
    return Piece.objects.select_related("job__customer")


def get_customer(pk: int) -> Customer:
    """The customer. Raises Http404."""
    return get_object_or_404(Customer, pk=pk)


def get_job(pk: int) -> Job:
    """The job. Raises Http404."""
    return get_object_or_404(Job, pk=pk)


def get_piece(pk: int) -> Piece:
    """The piece. Raises Http404."""
    return get_object_or_404(Piece, pk=pk)
