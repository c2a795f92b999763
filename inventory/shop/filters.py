import django_filters

from inventory.rest.problems import Role
from inventory.shop.models import Change, Person


class PersonFilter(django_filters.FilterSet):
    is_active = django_filters.BooleanFilter()
    role = django_filters.ChoiceFilter(choices=Role.choices)

    class Meta:
        model = Person
        fields = ["is_active", "role"]


class ChangeFilter(django_filters.FilterSet):
    noun = django_filters.CharFilter(max_length=40)
    record = django_filters.NumberFilter(min_value=1)
    field = django_filters.CharFilter(max_length=60)
    by = django_filters.ModelChoiceFilter(queryset=Person.objects.all())

    class Meta:
        model = Change
        fields = ["noun", "record", "field", "by"]
