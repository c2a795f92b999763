"""Pours: one coat on one or more pieces at one time, and what went in."""

import uuid
from decimal import Decimal

from django.conf import settings
from django.db import models
from django.db.models import Q

from inventory.catalog.models import Material
from inventory.jobs.models import Piece
from inventory.shop.fields import FixedField, QuantityField
from inventory.stock.models import Lot, LotStatus, Movement, Place


class Layer(models.TextChoices):
    """The coats, in the order they are laid."""

    PRIMER = "primer", "Primer"
    BASE_COAT = "base_coat", "Base coat"
    SEAL_COAT = "seal_coat", "Seal coat"
    FLOOD_COAT = "flood_coat", "Flood coat"
    ACCENT = "accent", "Accent"
    TOP_COAT = "top_coat", "Top coat"
    TOUCH_UP = "touch_up", "Touch-up"
    REPAIR = "repair", "Repair"


REDO_LAYERS = (Layer.TOUCH_UP, Layer.REPAIR)
"""Coats whose cost always stands beside a job's, never inside."""


class PourStatus(models.TextChoices):
    PLANNED = "planned", "Planned"
    COMPLETED = "completed", "Completed"
    REVERSED = "reversed", "Undone, entry mistake"
    CANCELLED = "cancelled", "Cancelled"


class Provenance(models.TextChoices):
    """How an amount is known: a person typed, weighed or scanned it, or it was filled in."""

    TYPED = "typed", "Typed"
    WEIGHED = "weighed", "Weighed"
    SCANNED = "scanned", "Scanned"
    ASSUMED = "assumed", "Assumed"


class Pour(models.Model):
    """Planned -> completed -> (corrected, reversed), or cancelled.

    Its movements in the ledger carry its id as their cause: used and wasted are its cost, counted is what was found.
    planned_for: when it is to be poured, or the time that was given when it was put down. poured_at: when it was.
    conditions: name -> {"value", "unit"?, "provenance"}, only what a person gave or the tool assumed and said so.
    ticks: name -> {"value", "provenance"}; sanded, wiped, sealed, mixing minutes, torch, ...
    is_redo: a coat laid again over one that failed; its cost stands beside the job's, not inside.
    needs_owner_reason: something expired or on hold went in, and the owner has not said why that was right.
    shown_pieces, shown_planned, shown_usages: filled by `queries.shown`, or by the action that has just written them.
    """

    uuid = models.UUIDField(default=uuid.uuid4, unique=True, editable=False)
    number = models.PositiveBigIntegerField(unique=True)
    layer = models.CharField(max_length=10, choices=Layer.choices)
    place = models.ForeignKey(Place, on_delete=models.PROTECT, related_name="pours")
    status = models.CharField(max_length=9, choices=PourStatus.choices, default=PourStatus.PLANNED)
    is_redo = models.BooleanField(default=False)
    planned_for = models.DateTimeField(null=True, blank=True)
    poured_at = models.DateTimeField(null=True, blank=True)
    people = models.ManyToManyField(settings.AUTH_USER_MODEL, blank=True, related_name="pours")
    conditions = models.JSONField(default=dict, blank=True)
    ticks = models.JSONField(default=dict, blank=True)
    note = models.TextField(blank=True)
    reason = models.TextField(blank=True, help_text="Why it was reversed or cancelled.")
    owner_reason = models.TextField(blank=True, help_text="The owner's word on what was out of the ordinary.")
    needs_owner_reason = models.BooleanField(default=False)
    by = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="+")
    made_at = models.DateTimeField(auto_now_add=True)
    version = models.PositiveIntegerField(default=1)

    shown_pieces: "list[PourPiece]"
    shown_planned: "list[PlannedUsage]"
    shown_usages: "list[Usage]"

    class Meta:
        ordering = ["-id"]
        indexes = [
            models.Index(fields=["status", "planned_for"]),
            models.Index(fields=["poured_at"]),
            models.Index(
                fields=["needs_owner_reason"], condition=Q(needs_owner_reason=True), name="pour_waits_for_owner"
            ),
        ]
        constraints = [
            models.CheckConstraint(condition=Q(status__in=PourStatus.values), name="pour_status_is_known"),
            models.CheckConstraint(condition=Q(layer__in=Layer.values), name="pour_layer_is_known"),
            models.CheckConstraint(
                condition=~Q(status__in=[PourStatus.COMPLETED, PourStatus.REVERSED]) | Q(poured_at__isnull=False),
                name="a_completed_pour_has_its_time",
            ),
        ]

    def __str__(self) -> str:
        return f"pour {self.number}"


class PourPiece(models.Model):
    """A piece under a pour. share_percent: its typed share of the cost; shared by area where nobody typed one."""

    pour = models.ForeignKey(Pour, on_delete=models.CASCADE, related_name="pour_pieces")
    piece = models.ForeignKey(Piece, on_delete=models.PROTECT, related_name="pour_pieces")
    share_percent = FixedField(places=6, null=True, blank=True)

    class Meta:
        ordering = ["id"]
        constraints = [models.UniqueConstraint(fields=["pour", "piece"], name="a_pour_names_a_piece_once")]

    def __str__(self) -> str:
        return f"{self.pour_id} on {self.piece_id}"


class PlannedUsage(models.Model):
    """What a planned pour is to take; kept as it was planned, once the pour is completed.

    place: where a named lot is to be taken from; empty for the pour's own place.
    """

    pour = models.ForeignKey(Pour, on_delete=models.CASCADE, related_name="planned_usages")
    position = models.PositiveIntegerField()
    material = models.ForeignKey(Material, on_delete=models.PROTECT, related_name="+")
    lot = models.ForeignKey(Lot, null=True, blank=True, on_delete=models.PROTECT, related_name="+")
    place = models.ForeignKey(Place, null=True, blank=True, on_delete=models.PROTECT, related_name="+")
    quantity = QuantityField()
    typed_amount = models.CharField(max_length=40)
    typed_unit = models.CharField(max_length=30)
    weighed_before = models.CharField(max_length=60, blank=True)
    weighed_after = models.CharField(max_length=60, blank=True)
    bucket = models.PositiveSmallIntegerField(null=True, blank=True)
    is_waste = models.BooleanField(default=False)
    reason = models.CharField(max_length=200, blank=True)
    provenance = models.CharField(max_length=8, choices=Provenance.choices, default=Provenance.ASSUMED)
    lot_provenance = models.CharField(max_length=8, choices=Provenance.choices, default=Provenance.ASSUMED)

    class Meta:
        ordering = ["position"]
        constraints = [models.CheckConstraint(condition=Q(quantity__gt=0), name="planned_usage_is_positive")]

    def __str__(self) -> str:
        return f"{self.typed_amount} {self.typed_unit}"


class Usage(models.Model):
    """What went in, from which lot: one row for each lot that an entered amount was taken from.

    position: which entered amount it comes from; rows of one amount that two lots gave share it.
    given_by: the pour whose left-over this was; empty for what a pour took itself.
    typed_amount, typed_unit: what a person said, of the whole amount.
    lot_status, was_expired: how the lot stood at the time of the pour, copied so that later events change nothing.
    density_g_per_ml, grams_per_tsp: the figures that turned the typed amount into stock units.
    is_taken_back: a correction or reversal has returned it to the lot.
    """

    pour = models.ForeignKey(Pour, on_delete=models.PROTECT, related_name="usages")
    given_by = models.ForeignKey(Pour, null=True, blank=True, on_delete=models.PROTECT, related_name="given_usages")
    position = models.PositiveIntegerField()
    material = models.ForeignKey(Material, on_delete=models.PROTECT, related_name="+")
    lot = models.ForeignKey(Lot, on_delete=models.PROTECT, related_name="usages")
    place = models.ForeignKey(Place, on_delete=models.PROTECT, related_name="+")
    movement = models.OneToOneField(Movement, on_delete=models.PROTECT, related_name="usage")
    quantity = QuantityField()
    typed_amount = models.CharField(max_length=40)
    typed_unit = models.CharField(max_length=30)
    weighed_before = models.CharField(max_length=60, blank=True)
    weighed_after = models.CharField(max_length=60, blank=True)
    density_g_per_ml = FixedField(places=6, null=True, blank=True)
    grams_per_tsp = FixedField(places=6, null=True, blank=True)
    bucket = models.PositiveSmallIntegerField(null=True, blank=True)
    is_waste = models.BooleanField(default=False)
    reason = models.CharField(max_length=200, blank=True)
    provenance = models.CharField(max_length=8, choices=Provenance.choices)
    lot_provenance = models.CharField(max_length=8, choices=Provenance.choices, default=Provenance.ASSUMED)
    lot_status = models.CharField(max_length=8, choices=LotStatus.choices)
    was_expired = models.BooleanField(default=False)
    is_taken_back = models.BooleanField(default=False)

    class Meta:
        ordering = ["id"]
        constraints = [models.CheckConstraint(condition=Q(quantity__gt=0), name="usage_is_positive")]

    @property
    def value(self) -> Decimal:
        """The money that went in with it, with every later change of the lot's cost where `queries.usages` read it."""
        changed: Decimal = getattr(self, "corrected", None) or Decimal(0)
        return -(self.movement.value + changed)

    def __str__(self) -> str:
        return f"{self.quantity} of lot {self.lot_id}"
