"""What the lists of customers, jobs and pieces are filtered by."""

import django_filters
from django.db.models import QuerySet

from inventory.jobs.models import Customer, Job, Piece, Purpose


class CustomerFilters(django_filters.FilterSet):
    is_archived = django_filters.BooleanFilter()

    class Meta:
        model = Customer
        fields: list[str] = []


class JobFilters(django_filters.FilterSet):
    customer = django_filters.ModelChoiceFilter(queryset=Customer.objects.all())
    purpose = django_filters.ChoiceFilter(choices=Purpose.choices)
    state = django_filters.ChoiceFilter(
        choices=[("unfinished", "Unfinished"), ("finished", "Finished"), ("handed_over", "Handed over")],
        method="in_state",
    )
    due_from = django_filters.DateFilter(field_name="due_on", lookup_expr="gte")
    due_to = django_filters.DateFilter(field_name="due_on", lookup_expr="lte")
    finished_from = django_filters.DateFilter(field_name="finished_on", lookup_expr="gte")
    finished_to = django_filters.DateFilter(field_name="finished_on", lookup_expr="lte")
    is_archived = django_filters.BooleanFilter()

    class Meta:
        model = Job
        fields: list[str] = []

    def in_state(self, jobs: QuerySet[Job], name: str, state: str) -> QuerySet[Job]:
        match state:
            case "unfinished":
                return jobs.filter(finished_on=None)
            case "finished":
                return jobs.exclude(finished_on=None)
            case _:
                return jobs.exclude(handed_over_on=None)


class PieceFilters(django_filters.FilterSet):
    job = django_filters.ModelChoiceFilter(queryset=Job.objects.all())
    customer = django_filters.ModelChoiceFilter(queryset=Customer.objects.all(), field_name="job__customer")
    is_scrapped = django_filters.BooleanFilter()

    class Meta:
        model = Piece
        fields: list[str] = []
