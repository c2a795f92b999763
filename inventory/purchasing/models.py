"""Deliveries, their lines and the charges that came with them or after them."""

from decimal import Decimal
from fractions import Fraction

from django.conf import settings
from django.db import models
from django.db.models import F, Q

from inventory.calc.landed_cost import SpreadBy as Proportion
from inventory.calc.rounding import half_even
from inventory.catalog.models import Material, Pack, Supplier
from inventory.shop.fields import MoneyField, QuantityField
from inventory.stock.models import Basis, Lot, Place, Posting


class Delivery(models.Model):
    number = models.PositiveBigIntegerField(unique=True)
    supplier = models.ForeignKey(Supplier, on_delete=models.PROTECT, related_name="deliveries")
    received_on = models.DateField()
    place = models.ForeignKey(Place, on_delete=models.PROTECT, related_name="deliveries")
    reference = models.CharField(max_length=80, blank=True)
    note = models.TextField(blank=True)
    by = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="deliveries")
    recorded_at = models.DateTimeField(auto_now_add=True)
    posting = models.ForeignKey(Posting, on_delete=models.PROTECT, related_name="+")
    undone_by = models.ForeignKey(Posting, null=True, blank=True, on_delete=models.PROTECT, related_name="+")

    class Meta:
        ordering = ["-received_on", "-id"]
        verbose_name_plural = "deliveries"

    @property
    def is_undone(self) -> bool:
        return self.undone_by_id is not None

    def __str__(self) -> str:
        return f"delivery {self.number}"


class DeliveryLine(models.Model):
    """One material of a delivery, in one lot.

    pack_line: which pack of the delivery it came in, counted from 1; the contents of one kit share it.
    pack_count: how many of that pack came.
    cost: money for the line before charges; empty while the price is to follow.
    booked_cost: what the ledger carries for the line before charges: its cost, or what the last price says of it.
    charges: what it bears of all charges and discounts, the sum of its shares.
    """

    delivery = models.ForeignKey(Delivery, on_delete=models.PROTECT, related_name="lines")
    position = models.PositiveIntegerField()
    material = models.ForeignKey(Material, on_delete=models.PROTECT, related_name="+")
    lot = models.OneToOneField(Lot, on_delete=models.PROTECT, related_name="delivery_line")
    pack = models.ForeignKey(Pack, null=True, blank=True, on_delete=models.PROTECT, related_name="+")
    pack_line = models.PositiveIntegerField(null=True, blank=True)
    pack_count = models.PositiveIntegerField(null=True, blank=True)
    quantity = QuantityField()
    typed_amount = models.CharField(max_length=40)
    typed_unit = models.CharField(max_length=30)
    containers = models.PositiveIntegerField(default=1)
    cost = MoneyField(null=True, blank=True)
    booked_cost = MoneyField()
    charges = MoneyField(default=Decimal(0))
    basis = models.CharField(max_length=13, choices=Basis.choices, default=Basis.PAID)

    class Meta:
        ordering = ["position"]
        constraints = [
            models.UniqueConstraint(fields=["delivery", "position"], name="delivery_line_position_once"),
            models.CheckConstraint(condition=Q(quantity__gt=0), name="delivered_is_positive"),
            models.CheckConstraint(
                condition=Q(cost__isnull=True, booked_cost__gte=0) | Q(cost__gte=0, booked_cost=F("cost")),
                name="what_is_booked_is_the_cost",
            ),
        ]

    @property
    def is_provisional(self) -> bool:
        return self.cost is None

    @property
    def landed_cost(self) -> Decimal:
        """What the line's lot cost altogether."""
        return self.booked_cost + self.charges

    @property
    def unit_cost(self) -> Decimal:
        """Landed money for one stock unit, to six places."""
        return half_even(Fraction(self.landed_cost) / Fraction(self.quantity), 6)

    def __str__(self) -> str:
        return f"{self.typed_amount} {self.typed_unit} of {self.material}"


class Charge(models.Model):
    """Freight, duty, handling or a discount, spread over a delivery's lines by value, mass or quantity."""

    class SpreadBy(models.TextChoices):
        VALUE = Proportion.VALUE.value, "Value"
        MASS = Proportion.MASS.value, "Mass"
        QUANTITY = Proportion.QUANTITY.value, "Quantity"

    delivery = models.ForeignKey(Delivery, on_delete=models.PROTECT, related_name="charges")
    kind = models.CharField(max_length=40)
    amount = MoneyField()
    spread_by = models.CharField(max_length=8, choices=SpreadBy.choices)
    charged_on = models.DateField()
    posting = models.ForeignKey(Posting, on_delete=models.PROTECT, related_name="+")

    class Meta:
        ordering = ["id"]
        constraints = [models.CheckConstraint(condition=~Q(amount=0), name="charge_is_not_nothing")]

    def __str__(self) -> str:
        return f"{self.kind} {self.amount}"


class ChargeShare(models.Model):
    """What one line bears of a charge."""

    charge = models.ForeignKey(Charge, on_delete=models.PROTECT, related_name="shares")
    line = models.ForeignKey(DeliveryLine, on_delete=models.PROTECT, related_name="charge_shares")
    amount = MoneyField()

    class Meta:
        constraints = [models.UniqueConstraint(fields=["charge", "line"], name="charge_share_once")]

    def __str__(self) -> str:
        return f"{self.amount} on line {self.line_id}"
