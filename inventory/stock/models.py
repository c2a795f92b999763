"""Lots, places and the ledger's own tables.

Postings and movements are append-only: triggers in the database refuse to change or remove them (`stock.triggers`).
They are written by `stock.ledger` alone.
"""

import uuid
from decimal import Decimal

from django.conf import settings
from django.db import models
from django.db.models import Q

from inventory.catalog.models import Material
from inventory.shop.fields import MoneyField, QuantityField


class Place(models.Model):
    """Where stock lies: the shop, the van, a job site."""

    number = models.PositiveBigIntegerField(unique=True)
    name = models.CharField(max_length=80, unique=True)
    is_archived = models.BooleanField(default=False)
    version = models.PositiveIntegerField(default=1)

    class Meta:
        ordering = ["id"]

    def __str__(self) -> str:
        return self.name


class LotStatus(models.TextChoices):
    USABLE = "usable", "OK"
    ON_HOLD = "on_hold", "On hold"
    REJECTED = "rejected", "Rejected"


class Origin(models.TextChoices):
    """Where a lot came from."""

    DELIVERY = "delivery", "Delivered"
    BLEND = "blend", "House mix"
    OPENED = "opened", "Opened from another lot"


class Basis(models.TextChoices):
    """What a lot's money rests on."""

    PAID = "paid", "Paid"
    FREE = "free", "Free"
    BORROWED = "borrowed", "Borrowed"
    CUSTOMERS_OWN = "customers_own", "The customer's own"


class Kind(models.TextChoices):
    """What an act of the shop does to its stock; a posting may also be `reversed`."""

    RECEIVED = "received", "Received"
    USED = "used", "Used"
    WASTED = "wasted", "Wasted"
    COUNTED = "counted", "Counted"
    MOVED = "moved", "Moved"
    OPENED = "opened", "Opened"
    BLENDED = "blended", "Blended"
    WRITTEN_OFF = "written_off", "Written off"
    RETURNED = "returned", "Returned"
    GIVEN = "given", "Sold or given away"
    CHARGED = "charged", "Charged"
    REVERSED = "reversed", "Undone, entry mistake"


KINDS_OF_INFLOW = [Kind.RECEIVED.value, Kind.CHARGED.value, Kind.OPENED.value, Kind.BLENDED.value, Kind.COUNTED.value]


class Lot(models.Model):
    """Containers of one material in the same state: one supplier lot number, one delivery or blend, one use-by.

    use_by: the earlier of expires_on and opened_on + open_life_days, kept by `stock.actions` alone; the last good day.
    open_life_days: copied from the material when the lot was opened, so that a later edit changes no past judgement.
    status: where the lot stands now; `StatusEvent` tells since when and why.
    """

    uuid = models.UUIDField(default=uuid.uuid4, unique=True, editable=False)
    number = models.PositiveBigIntegerField(unique=True)
    material = models.ForeignKey(Material, on_delete=models.PROTECT, related_name="lots")
    lot_number = models.CharField(max_length=60)
    is_own_number = models.BooleanField(default=False, help_text="None was on the label.")
    origin = models.CharField(max_length=10, choices=Origin.choices)
    opened_from = models.ForeignKey("self", null=True, blank=True, on_delete=models.PROTECT, related_name="opened_lots")
    received_on = models.DateField()
    received_at = models.DateTimeField()
    made_on = models.DateField(null=True, blank=True)
    expires_on = models.DateField(null=True, blank=True)
    opened_on = models.DateField(null=True, blank=True)
    open_life_days = models.PositiveIntegerField(null=True, blank=True)
    use_by = models.DateField(null=True, blank=True)
    containers = models.PositiveIntegerField(default=1)
    status = models.CharField(max_length=8, choices=LotStatus.choices, default=LotStatus.USABLE)
    basis = models.CharField(max_length=13, choices=Basis.choices, default=Basis.PAID)
    is_provisional = models.BooleanField(default=False)
    version = models.PositiveIntegerField(default=1)

    class Meta:
        ordering = ["id"]
        indexes = [
            models.Index(fields=["material", "status", "use_by"]),
            models.Index(fields=["lot_number", "material"]),
            models.Index(fields=["use_by"]),
        ]
        constraints = [
            models.CheckConstraint(condition=Q(status__in=LotStatus.values), name="lot_status_is_known"),
            models.CheckConstraint(condition=Q(origin__in=Origin.values), name="lot_origin_is_known"),
            models.CheckConstraint(
                condition=Q(origin=Origin.OPENED, opened_from__isnull=False)
                | (~Q(origin=Origin.OPENED) & Q(opened_from__isnull=True)),
                name="an_opened_lot_knows_its_parent",
            ),
        ]

    def __str__(self) -> str:
        return f"lot {self.number} ({self.lot_number})"


class LotNote(models.Model):
    """A dated remark on a lot: cold and grainy, warmed clear."""

    lot = models.ForeignKey(Lot, on_delete=models.PROTECT, related_name="notes")
    noted_at = models.DateTimeField()
    text = models.TextField()
    by = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="+")

    class Meta:
        ordering = ["-noted_at", "-id"]

    def __str__(self) -> str:
        return self.text


class StatusEvent(models.Model):
    """A lot put on hold, OK again, or rejected: since when, why, by whom. Rows are only ever added.

    named, whole_number: the lot that somebody spoke of, itself or the first of all with its supplier number; `lot` is
    that one or was reached through it. Together they say which bar this is (`stock.bars`).
    """

    lot = models.ForeignKey(Lot, on_delete=models.PROTECT, related_name="status_events")
    named = models.ForeignKey(Lot, on_delete=models.PROTECT, related_name="+")
    whole_number = models.BooleanField()
    status = models.CharField(max_length=8, choices=LotStatus.choices)
    since = models.DateTimeField()
    reason = models.TextField(blank=True)
    by = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="+")
    recorded_at = models.DateTimeField(auto_now_add=True)

    class Meta:
        ordering = ["id"]
        indexes = [models.Index(fields=["lot", "since"])]

    def __str__(self) -> str:
        return f"{self.lot_id} {self.status} since {self.since}"


class Posting(models.Model):
    """One act of the shop: kind, reason, who, recorded when. charged_on: the date on a late charge's own paper."""

    uuid = models.UUIDField(unique=True, editable=False)
    kind = models.CharField(max_length=11, choices=Kind.choices)
    reason = models.TextField(blank=True)
    by = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="postings")
    recorded_at = models.DateTimeField()
    charged_on = models.DateField(null=True, blank=True)

    class Meta:
        constraints = [models.CheckConstraint(condition=Q(kind__in=Kind.values), name="posting_kind_is_known")]

    def __str__(self) -> str:
        return f"{self.kind} {self.uuid}"


class Movement(models.Model):
    """One line of a posting: lot, place, signed quantity, signed money, happened when.

    kind: what the line counts as in every sum; a reversal bears the kind of what it undoes, so that sums are net.
    corrects: the movement whose quantity or money this line takes back or changes.
    into_lot: of a line that goes out into another lot (opened, blended): that lot.
    cause: the key of the pour or other act above this floor that made it happen; stock does not know what it names.
    happened_on: the shop's day of happened_at, fixed when recorded.
    """

    posting = models.ForeignKey(Posting, on_delete=models.PROTECT, related_name="movements", db_index=False)
    kind = models.CharField(max_length=11, choices=Kind.choices)
    lot = models.ForeignKey(Lot, on_delete=models.PROTECT, related_name="movements", db_index=False)
    material = models.ForeignKey(Material, on_delete=models.PROTECT, related_name="+", db_index=False)
    place = models.ForeignKey(Place, on_delete=models.PROTECT, related_name="+", db_index=False)
    quantity = QuantityField()
    value = MoneyField()
    happened_at = models.DateTimeField()
    happened_on = models.DateField()
    corrects = models.ForeignKey(
        "self", null=True, blank=True, on_delete=models.PROTECT, related_name="corrections", db_index=False
    )
    into_lot = models.ForeignKey(Lot, null=True, blank=True, on_delete=models.PROTECT, related_name="+", db_index=False)
    cause = models.BigIntegerField(null=True, blank=True)

    class Meta:
        indexes = [
            models.Index(fields=["posting"]),
            models.Index(fields=["lot", "happened_at"]),
            models.Index(fields=["material", "happened_on", "kind", "quantity"]),
            models.Index(fields=["happened_on", "kind"]),
            models.Index(fields=["corrects"], condition=Q(corrects__isnull=False), name="movement_corrects"),
            models.Index(fields=["into_lot"], condition=Q(into_lot__isnull=False), name="movement_into_lot"),
            models.Index(
                fields=["lot", "quantity", "value"], condition=Q(kind__in=KINDS_OF_INFLOW), name="movement_inflow"
            ),
            models.Index(fields=["lot", "into_lot"], condition=Q(into_lot__isnull=False), name="movement_goes_on"),
            models.Index(
                fields=["cause", "lot", "kind", "quantity", "value"],
                condition=Q(cause__isnull=False),
                name="movement_cause",
            ),
        ]
        constraints = [
            models.CheckConstraint(
                condition=Q(kind__in=[kind for kind in Kind.values if kind != Kind.REVERSED]),
                name="movement_kind_is_known",
            ),
        ]

    def __str__(self) -> str:
        return f"{self.kind} {self.quantity} of lot {self.lot_id}"


class Balance(models.Model):
    """The running sum of a lot's movements at a place. Never negative; empty is worth nothing."""

    lot = models.ForeignKey(Lot, on_delete=models.PROTECT, related_name="balances", db_index=False)
    place = models.ForeignKey(Place, on_delete=models.PROTECT, related_name="balances", db_index=False)
    quantity = QuantityField()
    value = MoneyField()

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["lot", "place"], name="one_balance_for_a_lot_at_a_place"),
            models.CheckConstraint(condition=Q(quantity__gte=0), name="balance_is_never_negative"),
            models.CheckConstraint(condition=Q(value__gte=0), name="value_is_never_negative"),
            models.CheckConstraint(condition=Q(quantity__gt=0) | Q(value=0), name="empty_is_worth_nothing"),
        ]
        indexes = [models.Index(fields=["place", "lot"], condition=Q(quantity__gt=0), name="balance_at_place")]

    def __str__(self) -> str:
        return f"{self.quantity} of lot {self.lot_id} at {self.place_id}"


class Reservation(models.Model):
    """Stock set aside: of a material, perhaps of one lot, for a day and a job.

    job_key and cause are keys of nouns above this floor; stock does not know what they name.
    """

    material = models.ForeignKey(Material, on_delete=models.PROTECT, related_name="reservations")
    lot = models.ForeignKey(Lot, null=True, blank=True, on_delete=models.PROTECT, related_name="reservations")
    place = models.ForeignKey(Place, on_delete=models.PROTECT, related_name="+")
    quantity = QuantityField()
    needed_on = models.DateField(null=True, blank=True)
    job_key = models.BigIntegerField(null=True, blank=True)
    cause = models.BigIntegerField()

    class Meta:
        constraints = [models.CheckConstraint(condition=Q(quantity__gt=0), name="reservation_is_positive")]
        indexes = [models.Index(fields=["cause"]), models.Index(fields=["job_key"])]

    def __str__(self) -> str:
        return f"{self.quantity} of material {self.material_id}"


class StockCount(models.Model):
    """Somebody looked at a place at a moment and wrote down what was there.

    posting: the differences; without lines where the book was right.
    """

    number = models.PositiveBigIntegerField(unique=True)
    place = models.ForeignKey(Place, on_delete=models.PROTECT, related_name="counts")
    counted_at = models.DateTimeField()
    by = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="+")
    posting = models.OneToOneField(Posting, on_delete=models.PROTECT, related_name="+")
    undone_by = models.ForeignKey(Posting, null=True, blank=True, on_delete=models.PROTECT, related_name="+")

    class Meta:
        ordering = ["-id"]

    def __str__(self) -> str:
        return f"count {self.number}"


class StockCountLine(models.Model):
    """What was counted of one lot, and what the book said at that moment: an assertion that later entries respect."""

    count = models.ForeignKey(StockCount, on_delete=models.PROTECT, related_name="lines")
    lot = models.ForeignKey(Lot, on_delete=models.PROTECT, related_name="count_lines", db_index=False)
    place = models.ForeignKey(Place, on_delete=models.PROTECT, related_name="+", db_index=False)
    counted_at = models.DateTimeField()
    counted = QuantityField()
    book = QuantityField()
    reason = models.CharField(max_length=200, blank=True)
    is_asserted = models.BooleanField(default=True)

    class Meta:
        ordering = ["id"]
        constraints = [
            models.UniqueConstraint(fields=["count", "lot"], name="a_count_names_a_lot_once"),
            models.CheckConstraint(condition=Q(counted__gte=0), name="counted_is_not_negative"),
        ]
        indexes = [models.Index(fields=["lot", "place", "counted_at"])]

    @property
    def difference(self) -> Decimal:
        """counted - book: above zero where more was there than the book said."""
        return self.counted - self.book

    def __str__(self) -> str:
        return f"{self.counted} of lot {self.lot_id}, book {self.book}"


class Blend(models.Model):
    """A lot made from lots: a house colour, a squeeze bottle topped up from a pail."""

    number = models.PositiveBigIntegerField(unique=True)
    lot = models.OneToOneField(Lot, on_delete=models.PROTECT, related_name="blend")
    made_at = models.DateTimeField()
    posting = models.OneToOneField(Posting, on_delete=models.PROTECT, related_name="+")
    by = models.ForeignKey(settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="+")
    undone_by = models.ForeignKey(Posting, null=True, blank=True, on_delete=models.PROTECT, related_name="+")

    class Meta:
        ordering = ["-id"]

    def __str__(self) -> str:
        return f"house mix {self.number}"


class Return(models.Model):
    """Goods sent back to the supplier or the lender.

    credit: the money that came back for them, which need not be what they cost.
    """

    class To(models.TextChoices):
        SUPPLIER = "supplier", "The supplier"
        LENDER = "lender", "The lender"

    lot = models.ForeignKey(Lot, on_delete=models.PROTECT, related_name="returns")
    posting = models.OneToOneField(Posting, on_delete=models.PROTECT, related_name="+")
    to = models.CharField(max_length=8, choices=To.choices)
    credit = MoneyField(null=True, blank=True)

    def __str__(self) -> str:
        return f"return of lot {self.lot_id} to the {self.to}"


class Emptied(models.Model):
    """A lot said to be empty: what the book still had of it was pail loss, posted here."""

    lot = models.ForeignKey(Lot, on_delete=models.PROTECT, related_name="emptyings")
    posting = models.OneToOneField(Posting, on_delete=models.PROTECT, related_name="+")

    def __str__(self) -> str:
        return f"lot {self.lot_id} emptied"
