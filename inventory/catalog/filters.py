import django_filters

from inventory.catalog.models import Material, MaterialKind, Pack, ResinSystem, StockUnit, Supplier


class SupplierFilter(django_filters.FilterSet):
    is_archived = django_filters.BooleanFilter()

    class Meta:
        model = Supplier
        fields = ["is_archived"]


class MaterialFilter(django_filters.FilterSet):
    code = django_filters.CharFilter(max_length=40)
    kind = django_filters.MultipleChoiceFilter(choices=MaterialKind.choices)
    stock_unit = django_filters.ChoiceFilter(choices=StockUnit.choices)
    main_supplier = django_filters.ModelChoiceFilter(queryset=Supplier.objects.all())
    tracks_lots = django_filters.BooleanFilter()
    is_in_use = django_filters.BooleanFilter()
    is_archived = django_filters.BooleanFilter()

    class Meta:
        model = Material
        fields = ["code", "kind", "stock_unit", "main_supplier", "tracks_lots", "is_in_use", "is_archived"]


class PackFilter(django_filters.FilterSet):
    supplier = django_filters.ModelChoiceFilter(queryset=Supplier.objects.all())
    material = django_filters.ModelChoiceFilter(
        queryset=Material.objects.all(), field_name="contents__material", label="Holds this material"
    )
    is_archived = django_filters.BooleanFilter()

    class Meta:
        model = Pack
        fields = ["supplier", "material", "is_archived"]


class ResinSystemFilter(django_filters.FilterSet):
    material = django_filters.ModelChoiceFilter(
        queryset=Material.objects.all(), field_name="parts__material", label="Has this material as a part"
    )
    is_archived = django_filters.BooleanFilter()

    class Meta:
        model = ResinSystem
        fields = ["material", "is_archived"]
