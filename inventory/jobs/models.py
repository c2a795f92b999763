"""Customers, their jobs, and the tops (pieces) that are poured."""

import uuid

from django.db import models
from django.db.models import Q

from inventory.shop.fields import FixedField


class Customer(models.Model):
    number = models.PositiveBigIntegerField(unique=True)
    name = models.CharField(max_length=120)
    phone = models.CharField(max_length=60, blank=True)
    email = models.EmailField(blank=True)
    address = models.TextField(blank=True)
    note = models.TextField(blank=True)
    is_archived = models.BooleanField(default=False)
    version = models.PositiveIntegerField(default=1)

    class Meta:
        ordering = ["name", "id"]

    def __str__(self) -> str:
        return self.name


class Purpose(models.TextChoices):
    CUSTOMER = "customer", "Customer work"
    SAMPLE = "sample", "Sample board"
    CLASS = "class", "Class"
    TRIAL = "trial", "Trial"


class Job(models.Model):
    """Work for one customer. It keeps the counting rule (which faces are area) that it was made under."""

    number = models.PositiveBigIntegerField(unique=True)
    customer = models.ForeignKey(Customer, on_delete=models.PROTECT, related_name="jobs")
    title = models.CharField(max_length=160)
    purpose = models.CharField(max_length=8, choices=Purpose.choices, default=Purpose.CUSTOMER)
    site = models.CharField(max_length=200, blank=True)
    note = models.TextField(blank=True)
    due_on = models.DateField(null=True, blank=True)
    finished_on = models.DateField(null=True, blank=True)
    handed_over_on = models.DateField(null=True, blank=True)
    counts_top = models.BooleanField(default=True)
    counts_edges = models.BooleanField(default=True)
    counts_splash = models.BooleanField(default=True)
    deducts_cutouts = models.BooleanField(default=False)
    is_archived = models.BooleanField(default=False)
    version = models.PositiveIntegerField(default=1)

    class Meta:
        ordering = ["-id"]
        indexes = [models.Index(fields=["finished_on"])]
        constraints = [models.CheckConstraint(condition=Q(purpose__in=Purpose.values), name="job_purpose_is_known")]

    def __str__(self) -> str:
        return f"job {self.number}: {self.title}"


class Piece(models.Model):
    """One top. Faces are kept apart; `area_sqft` counts them by the job's rule and is kept by `jobs.actions` alone.

    shape: the dimensions as given, in inches, as the API takes them.
    A scrapped piece keeps its cost: `area_sqft` stays, since a pour's cost is shared by it. It loses its finished area:
    whoever sums areas leaves scrapped pieces out.
    """

    class AreaSource(models.TextChoices):
        QUOTED = "quoted", "Quoted"
        TEMPLATED = "templated", "Templated"
        FINAL = "final", "Final"

    uuid = models.UUIDField(default=uuid.uuid4, unique=True, editable=False)
    number = models.PositiveBigIntegerField(unique=True)
    job = models.ForeignKey(Job, on_delete=models.PROTECT, related_name="pieces")
    name = models.CharField(max_length=120)
    shape = models.JSONField(default=dict)
    top_sqft = FixedField(places=6)
    edge_sqft = FixedField(places=6, default=0)
    splash_sqft = FixedField(places=6, default=0)
    cutout_sqft = FixedField(places=6, default=0)
    area_sqft = FixedField(places=6)
    area_source = models.CharField(max_length=9, choices=AreaSource.choices, default=AreaSource.QUOTED)
    is_scrapped = models.BooleanField(default=False)
    scrapped_reason = models.CharField(max_length=200, blank=True)
    version = models.PositiveIntegerField(default=1)

    class Meta:
        ordering = ["id"]
        constraints = [models.CheckConstraint(condition=Q(area_sqft__gte=0), name="piece_area_is_not_negative")]

    def __str__(self) -> str:
        return f"top {self.number}: {self.name}"
