"""What the lists of the shelf can be filtered by."""

from typing import Any

import django_filters as filters
from django.db.models import Exists, OuterRef, Q, QuerySet
from drf_spectacular.types import OpenApiTypes
from drf_spectacular.utils import extend_schema_field

from inventory.catalog.models import Material, MaterialKind
from inventory.shop.clock import today
from inventory.stock.models import Balance, Blend, Kind, Lot, LotStatus, Movement, Origin, Place, StockCount


@extend_schema_field(OpenApiTypes.INT64)
class RecordFilter(filters.ModelChoiceFilter):
    """A record by its id, where the filter is more than a comparison."""


class PlaceFilter(filters.FilterSet):
    is_archived = filters.BooleanFilter()

    class Meta:
        model = Place
        fields: list[str] = []


class LotFilter(filters.FilterSet):
    """on_hand: true for lots of which something is left. use_by_before: good for the last time before that day."""

    material = filters.ModelChoiceFilter(queryset=Material.objects.all())
    kind = filters.ChoiceFilter(field_name="material__kind", choices=MaterialKind.choices, label="Kind of material.")
    status = filters.ChoiceFilter(choices=LotStatus.choices)
    place = RecordFilter(queryset=Place.objects.all(), method="lies_at", label="Where something lies.")
    use_by_before = filters.DateFilter(field_name="use_by", lookup_expr="lt")
    is_expired = filters.BooleanFilter(method="past_use_by", label="Past its use-by today.")
    lot_number = filters.CharFilter(max_length=60)
    number = filters.NumberFilter(min_value=1, max_value=2**53)
    origin = filters.ChoiceFilter(choices=Origin.choices)
    opened_from = filters.ModelChoiceFilter(queryset=Lot.objects.all())
    is_provisional = filters.BooleanFilter()
    is_open = filters.BooleanFilter(field_name="opened_on", lookup_expr="isnull", exclude=True)
    on_hand = filters.BooleanFilter(method="has_some", label="Something is left.")

    class Meta:
        model = Lot
        fields: list[str] = []

    def lies_at(self, lots: QuerySet[Lot], name: str, place: Place) -> QuerySet[Lot]:
        return lots.filter(Exists(Balance.objects.filter(lot=OuterRef("pk"), place=place, quantity__gt=0)))

    def past_use_by(self, lots: QuerySet[Lot], name: str, wanted: bool) -> QuerySet[Lot]:
        past = Q(use_by__lt=today())
        return lots.filter(past) if wanted else lots.exclude(past)

    def has_some(self, lots: QuerySet[Lot], name: str, wanted: bool) -> QuerySet[Lot]:
        some = Exists(Balance.objects.filter(lot=OuterRef("pk"), quantity__gt=0))
        return lots.filter(some) if wanted else lots.filter(~some)


class MovementFilter(filters.FilterSet):
    """happened_from, happened_to: days of the shop, both included. cause: the id of a pour.

    Floors above, which know more nouns, add their filters in a subclass.
    """

    lot = filters.ModelChoiceFilter(queryset=Lot.objects.all())
    material = filters.ModelChoiceFilter(queryset=Material.objects.all())
    place = filters.ModelChoiceFilter(queryset=Place.objects.all())
    kind = filters.MultipleChoiceFilter(choices=[choice for choice in Kind.choices if choice[0] != Kind.REVERSED])
    posting = filters.NumberFilter(field_name="posting_id", min_value=1, max_value=2**53)
    cause = filters.NumberFilter(min_value=1, max_value=2**53)
    happened_from = filters.DateFilter(field_name="happened_on", lookup_expr="gte")
    happened_to = filters.DateFilter(field_name="happened_on", lookup_expr="lte")

    class Meta:
        model = Movement
        fields: list[str] = []


class CountFilter(filters.FilterSet):
    place = filters.ModelChoiceFilter(queryset=Place.objects.all())
    lot = filters.ModelChoiceFilter(queryset=Lot.objects.all(), field_name="lines__lot", distinct=True)
    is_undone = filters.BooleanFilter(field_name="undone_by", lookup_expr="isnull", exclude=True)

    class Meta:
        model = StockCount
        fields: list[str] = []


class BlendFilter(filters.FilterSet):
    material = filters.ModelChoiceFilter(queryset=Material.objects.all(), field_name="lot__material")
    is_undone = filters.BooleanFilter(field_name="undone_by", lookup_expr="isnull", exclude=True)

    class Meta:
        model = Blend
        fields: list[str] = []


class ShelfFilter(filters.FilterSet):
    """place: figures of that place alone. on_hand: true for materials of which something is there."""

    kind = filters.MultipleChoiceFilter(choices=MaterialKind.choices)
    is_archived = filters.BooleanFilter()
    place = RecordFilter(queryset=Place.objects.all(), method="of_all", label="Figures of one place.")
    on_hand = filters.BooleanFilter(method="has_some", label="Something is there.")

    class Meta:
        model = Material
        fields: list[str] = []

    def of_all(self, materials: QuerySet[Material], name: str, place: Place) -> QuerySet[Material]:
        """Materials that lie elsewhere are listed too, with nothing at the place."""
        return materials

    def has_some(self, materials: QuerySet[Material], name: str, wanted: bool) -> QuerySet[Material]:
        balances: QuerySet[Any] = Balance.objects.filter(lot__material=OuterRef("pk"), quantity__gt=0)
        place = self.form.cleaned_data.get("place")
        some = Exists(balances if place is None else balances.filter(place=place))
        return materials.filter(some) if wanted else materials.filter(~some)
