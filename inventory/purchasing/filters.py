"""What the list of deliveries can be filtered by."""

import django_filters as filters

from inventory.catalog.models import Material, Supplier
from inventory.purchasing.models import Delivery


class DeliveryFilter(filters.FilterSet):
    """Deliveries: of whom, of what, when, still without a price."""

    supplier = filters.ModelChoiceFilter(queryset=Supplier.objects.all())
    material = filters.ModelChoiceFilter(queryset=Material.objects.all(), field_name="lines__material", distinct=True)
    lot_number = filters.CharFilter(field_name="lines__lot__lot_number", distinct=True)
    received_from = filters.DateFilter(field_name="received_on", lookup_expr="gte")
    received_to = filters.DateFilter(field_name="received_on", lookup_expr="lte")
    is_provisional = filters.BooleanFilter(field_name="waits_for_price", label="A price is to follow.")
    is_undone = filters.BooleanFilter(field_name="undone_by", lookup_expr="isnull", exclude=True)

    class Meta:
        model = Delivery
        fields: list[str] = []
