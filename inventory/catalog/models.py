"""What a shop buys and uses up."""

from django.core.validators import RegexValidator
from django.db import models
from django.db.models import Q

from inventory.shop.fields import FixedField, MoneyField, QuantityField


class MaterialKind(models.TextChoices):
    RESIN = "resin", "Resin"
    HARDENER = "hardener", "Hardener"
    DYE = "dye", "Dye"
    PASTE = "paste", "Paste"
    POWDER = "powder", "Powder"
    SPRAY_CAN = "spray_can", "Spray can"
    PAINT = "paint", "Paint"
    SOLVENT = "solvent", "Solvent"
    CONSUMABLE = "consumable", "Consumable"


class StockUnit(models.TextChoices):
    MILLILITRES = "ml", "mL"
    GRAMS = "g", "g"
    EACH = "each", "each"
    FEET = "ft", "ft"
    SQUARE_FEET = "sqft", "sq ft"


class Supplier(models.Model):
    number = models.PositiveBigIntegerField(unique=True)
    name = models.CharField(max_length=120, unique=True)
    lead_time_days = models.PositiveIntegerField()
    phone = models.CharField(max_length=60, blank=True)
    email = models.EmailField(blank=True)
    note = models.TextField(blank=True)
    is_archived = models.BooleanField(default=False)
    version = models.PositiveIntegerField(default=1)

    class Meta:
        ordering = ["name", "id"]

    def __str__(self) -> str:
        return self.name


class Material(models.Model):
    """Something bought, kept and used up. Its stock unit is fixed once it has moved (`is_in_use`).

    density_g_per_ml: of a liquid. grams_per_tsp: of a powder, a level teaspoon of it loose, weighed.
    """

    number = models.PositiveBigIntegerField(unique=True)
    code = models.CharField(max_length=40, unique=True)
    name = models.CharField(max_length=120)
    kind = models.CharField(max_length=12, choices=MaterialKind.choices)
    stock_unit = models.CharField(max_length=5, choices=StockUnit.choices)
    density_g_per_ml = FixedField(places=6, null=True, blank=True)
    grams_per_tsp = FixedField(places=6, null=True, blank=True)
    shelf_life_days = models.PositiveIntegerField(null=True, blank=True)
    open_life_days = models.PositiveIntegerField(null=True, blank=True)
    tracks_lots = models.BooleanField(default=True)
    single_lot_per_job = models.BooleanField(default=False)
    hazard_codes = models.JSONField(default=list, blank=True)
    cautions = models.TextField(blank=True)
    swatch = models.CharField(max_length=7, blank=True, validators=[RegexValidator(r"^#[0-9a-fA-F]{6}$")])
    main_supplier = models.ForeignKey(
        Supplier, null=True, blank=True, on_delete=models.PROTECT, related_name="materials"
    )
    is_in_use = models.BooleanField(default=False, editable=False)
    is_archived = models.BooleanField(default=False)
    version = models.PositiveIntegerField(default=1)

    class Meta:
        ordering = ["name", "id"]
        constraints = [
            models.CheckConstraint(condition=Q(kind__in=MaterialKind.values), name="material_kind_is_known"),
            models.CheckConstraint(condition=Q(stock_unit__in=StockUnit.values), name="material_stock_unit_is_known"),
            models.CheckConstraint(
                condition=Q(density_g_per_ml__isnull=True) | Q(density_g_per_ml__gt=0),
                name="material_density_is_positive",
            ),
            models.CheckConstraint(
                condition=Q(grams_per_tsp__isnull=True) | Q(grams_per_tsp__gt=0),
                name="material_spoon_weight_is_positive",
            ),
        ]

    def __str__(self) -> str:
        return self.name


class Measure(models.Model):
    """A material's own measure: 1 pump = 30 mL, 1 scoop = 4 g, 1 can = 340 g net and 95 g empty."""

    material = models.ForeignKey(Material, on_delete=models.CASCADE, related_name="measures")
    name = models.CharField(max_length=30)
    quantity = QuantityField(help_text="In the material's stock unit.")
    typed_amount = models.CharField(max_length=40)
    typed_unit = models.CharField(max_length=30)
    empty_g = FixedField(places=6, null=True, blank=True, help_text="Weight of the empty container, in grams.")

    class Meta:
        ordering = ["id"]
        constraints = [
            models.UniqueConstraint(fields=["material", "name"], name="measure_is_named_once"),
            models.CheckConstraint(condition=Q(quantity__gt=0), name="measure_is_positive"),
        ]

    def __str__(self) -> str:
        return f"1 {self.name} = {self.typed_amount} {self.typed_unit}"


class Pack(models.Model):
    """What a supplier sells under one price: a bottle, a case of twelve, or a kit of several contents."""

    number = models.PositiveBigIntegerField(unique=True)
    supplier = models.ForeignKey(Supplier, on_delete=models.PROTECT, related_name="packs")
    name = models.CharField(max_length=120)
    price = MoneyField(null=True, blank=True)
    is_archived = models.BooleanField(default=False)
    version = models.PositiveIntegerField(default=1)

    class Meta:
        ordering = ["name", "id"]
        constraints = [
            models.UniqueConstraint(fields=["supplier", "name"], name="pack_is_named_once"),
            models.CheckConstraint(
                condition=Q(price__isnull=True) | Q(price__gte=0), name="pack_price_is_not_negative"
            ),
        ]

    def __str__(self) -> str:
        return self.name


class PackContent(models.Model):
    pack = models.ForeignKey(Pack, on_delete=models.CASCADE, related_name="contents")
    material = models.ForeignKey(Material, on_delete=models.PROTECT, related_name="packed_in")
    quantity = QuantityField(help_text="In the material's stock unit.")
    typed_amount = models.CharField(max_length=40)
    typed_unit = models.CharField(max_length=30)
    cost_share_percent = FixedField(places=6, null=True, blank=True)

    class Meta:
        ordering = ["id"]
        constraints = [
            models.UniqueConstraint(fields=["pack", "material"], name="pack_holds_a_material_once"),
            models.CheckConstraint(condition=Q(quantity__gt=0), name="pack_content_is_positive"),
        ]

    def __str__(self) -> str:
        return f"{self.typed_amount} {self.typed_unit} of {self.material}"


class ResinSystem(models.Model):
    """Parts that cure together, with their mix ratio. Every figure is the maker's own, typed by the shop."""

    number = models.PositiveBigIntegerField(unique=True)
    name = models.CharField(max_length=120, unique=True)
    tolerance_percent = FixedField(places=6, null=True, blank=True)
    pot_life_minutes = models.PositiveIntegerField(null=True, blank=True)
    pot_life_mass_g = FixedField(places=6, null=True, blank=True)
    pot_life_at_c = FixedField(places=6, null=True, blank=True)
    working_minutes = models.PositiveIntegerField(null=True, blank=True)
    min_temp_c = FixedField(places=6, null=True, blank=True)
    max_temp_c = FixedField(places=6, null=True, blank=True)
    max_humidity_percent = FixedField(places=6, null=True, blank=True)
    max_layer_in = FixedField(places=6, null=True, blank=True)
    recoat_tacky_from_h = FixedField(places=6, null=True, blank=True)
    recoat_tacky_to_h = FixedField(places=6, null=True, blank=True)
    recoat_sanded_from_h = FixedField(places=6, null=True, blank=True)
    recoat_sanded_to_h = FixedField(places=6, null=True, blank=True)
    max_bucket_ml = QuantityField(null=True, blank=True)
    max_colourant_percent = FixedField(places=6, null=True, blank=True)
    paint_dry_h = FixedField(places=6, null=True, blank=True)
    is_archived = models.BooleanField(default=False)
    version = models.PositiveIntegerField(default=1)

    class Meta:
        ordering = ["name", "id"]

    def __str__(self) -> str:
        return self.name


class ResinPart(models.Model):
    """A part of a resin system (A, B, …) and its share of the ratio, by volume, by mass, or both."""

    system = models.ForeignKey(ResinSystem, on_delete=models.CASCADE, related_name="parts")
    role = models.CharField(max_length=2)
    material = models.ForeignKey(Material, on_delete=models.PROTECT, related_name="resin_parts")
    by_volume = FixedField(places=6, null=True, blank=True)
    by_mass = FixedField(places=6, null=True, blank=True)

    class Meta:
        ordering = ["role"]
        constraints = [
            models.UniqueConstraint(fields=["system", "role"], name="resin_part_role_once"),
            models.UniqueConstraint(fields=["system", "material"], name="resin_part_material_once"),
            models.CheckConstraint(condition=Q(by_volume__gt=0) | Q(by_mass__gt=0), name="resin_part_has_a_ratio"),
        ]

    def __str__(self) -> str:
        return f"{self.system} {self.role}"
