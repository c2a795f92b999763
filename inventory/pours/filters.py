"""What the list of pours is filtered by."""

from datetime import date, timedelta

import django_filters
from django.db.models import QuerySet

from inventory.catalog.models import Material
from inventory.jobs.models import Customer, Job, Piece
from inventory.pours.models import Layer, Pour, PourStatus
from inventory.shop.clock import start_of_day
from inventory.shop.models import Person
from inventory.stock.filters import RecordFilter
from inventory.stock.models import Lot, Place


class PourFilters(django_filters.FilterSet):
    """Days are the shop's, both included."""

    status = django_filters.MultipleChoiceFilter(choices=PourStatus.choices)
    layer = django_filters.MultipleChoiceFilter(choices=Layer.choices)
    job = django_filters.ModelChoiceFilter(
        queryset=Job.objects.all(), field_name="pour_pieces__piece__job", distinct=True
    )
    piece = django_filters.ModelChoiceFilter(
        queryset=Piece.objects.all(), field_name="pour_pieces__piece", distinct=True
    )
    customer = django_filters.ModelChoiceFilter(
        queryset=Customer.objects.all(), field_name="pour_pieces__piece__job__customer", distinct=True
    )
    place = django_filters.ModelChoiceFilter(queryset=Place.objects.all())
    person = django_filters.ModelChoiceFilter(queryset=Person.objects.all(), field_name="people", distinct=True)
    lot = RecordFilter(queryset=Lot.objects.all(), method="took_lot")
    material = RecordFilter(queryset=Material.objects.all(), method="took_material")
    needs_owner_reason = django_filters.BooleanFilter()
    is_redo = django_filters.BooleanFilter()
    planned_from = django_filters.DateFilter(method="from_day")
    planned_to = django_filters.DateFilter(method="to_day")
    poured_from = django_filters.DateFilter(method="from_day")
    poured_to = django_filters.DateFilter(method="to_day")

    class Meta:
        model = Pour
        fields: list[str] = []

    def took_lot(self, pours: QuerySet[Pour], name: str, lot: Lot) -> QuerySet[Pour]:
        return pours.filter(usages__lot=lot, usages__is_taken_back=False).distinct()

    def took_material(self, pours: QuerySet[Pour], name: str, material: Material) -> QuerySet[Pour]:
        return pours.filter(usages__material=material, usages__is_taken_back=False).distinct()

    def from_day(self, pours: QuerySet[Pour], name: str, day: date) -> QuerySet[Pour]:
        return pours.filter(**{f"{MOMENTS[name]}__gte": start_of_day(day)})

    def to_day(self, pours: QuerySet[Pour], name: str, day: date) -> QuerySet[Pour]:
        if day >= date.max:
            return pours
        return pours.filter(**{f"{MOMENTS[name]}__lt": start_of_day(day + timedelta(days=1))})


MOMENTS = {
    "planned_from": "planned_for",
    "planned_to": "planned_for",
    "poured_from": "poured_at",
    "poured_to": "poured_at",
}
