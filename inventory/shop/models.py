"""The shop's settings, its people, the change log and the spoken numbers."""

from typing import Any, ClassVar

from django.contrib.auth.models import AbstractUser, UserManager
from django.db import models

from inventory.rest.problems import Role


class People(UserManager["Person"]):
    """Makes people. Owners may enter the admin pages. Who gives no name is called by the username."""

    def create_user(
        self, username: str, email: str | None = None, password: str | None = None, **extra: Any
    ) -> "Person":
        is_owner = extra.get("role") == Role.OWNER
        given = {"is_staff": is_owner, "is_superuser": is_owner, "name": username, **extra}
        return super().create_user(username, email, password, **given)

    def create_superuser(
        self, username: str, email: str | None = None, password: str | None = None, **extra: Any
    ) -> "Person":
        return super().create_superuser(username, email, password, **{"role": Role.OWNER, "name": username, **extra})


class Person(AbstractUser):
    """Somebody who signs in. Never deleted: what they recorded keeps their name; `is_active` ends their access."""

    first_name = None  # type: ignore[assignment]  # one name is asked for, in whatever order its bearer writes it
    last_name = None  # type: ignore[assignment]
    name = models.CharField(max_length=120, blank=True)
    role = models.CharField(max_length=10, choices=Role.choices, default=Role.VIEWER)
    version = models.PositiveIntegerField(default=1)

    objects: ClassVar[People] = People()

    class Meta:
        verbose_name_plural = "people"
        constraints = [models.CheckConstraint(condition=models.Q(role__in=Role.values), name="person_role_is_known")]

    def __str__(self) -> str:
        return self.name or self.username

    def get_full_name(self) -> str:
        return str(self)

    def get_short_name(self) -> str:
        return str(self)


class VolumeUnit(models.TextChoices):
    FLUID_OUNCES = "fl_oz", "fl oz"
    MILLILITRES = "ml", "mL"


class MassUnit(models.TextChoices):
    OUNCES = "oz", "oz (weight)"
    GRAMS = "g", "g"


class AreaUnit(models.TextChoices):
    SQUARE_FEET = "sqft", "sq ft"
    SQUARE_METRES = "sqm", "m²"


class TemperatureUnit(models.TextChoices):
    FAHRENHEIT = "F", "°F"
    CELSIUS = "C", "°C"


class Shop(models.Model):
    """The one row of settings: how this shop is called, counts and measures.

    Changing the time zone or the currency touches nothing that was posted.
    """

    name = models.CharField(max_length=120)
    town = models.CharField(max_length=120, blank=True)
    currency = models.CharField(max_length=3, default="USD")
    time_zone = models.CharField(max_length=64, default="UTC")
    volume_unit = models.CharField(max_length=5, choices=VolumeUnit.choices, default=VolumeUnit.FLUID_OUNCES)
    mass_unit = models.CharField(max_length=2, choices=MassUnit.choices, default=MassUnit.GRAMS)
    area_unit = models.CharField(max_length=4, choices=AreaUnit.choices, default=AreaUnit.SQUARE_FEET)
    temperature_unit = models.CharField(
        max_length=1, choices=TemperatureUnit.choices, default=TemperatureUnit.FAHRENHEIT
    )
    counts_top = models.BooleanField(default=True)
    counts_edges = models.BooleanField(default=True)
    counts_splash = models.BooleanField(default=True)
    deducts_cutouts = models.BooleanField(default=False)
    poison_help = models.CharField(max_length=60, blank=True, help_text="The Poison help number of the shop's country.")
    version = models.PositiveIntegerField(default=1)

    class Meta:
        constraints = [models.CheckConstraint(condition=models.Q(pk=1), name="there_is_one_shop")]

    def __str__(self) -> str:
        return self.name


class Change(models.Model):
    """One field of one record, before and after: the change log. Rows are only ever added."""

    at = models.DateTimeField(auto_now_add=True)
    by = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="changes")
    noun = models.CharField(max_length=40)
    record = models.BigIntegerField()
    field = models.CharField(max_length=60)
    before = models.TextField(blank=True)
    after = models.TextField(blank=True)

    class Meta:
        indexes = [models.Index(fields=["noun", "record", "-id"])]

    def __str__(self) -> str:
        return f"{self.noun} {self.record} {self.field}: {self.before} -> {self.after}"


class Counter(models.Model):
    """The last spoken number of a noun."""

    noun = models.CharField(max_length=40, primary_key=True)
    last = models.BigIntegerField(default=0)

    def __str__(self) -> str:
        return f"{self.noun} {self.last}"
