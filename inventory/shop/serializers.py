"""The shapes of the shop's settings, its people, sessions and the change log."""

from typing import Any

from rest_framework import serializers

from inventory.rest.problems import Role
from inventory.shop.models import AreaUnit, MassUnit, TemperatureUnit, VolumeUnit

LONGEST_PASSWORD = 128
LONGEST_NAME = 120
LONGEST_USERNAME = 150


class AsAnswered(serializers.Serializer[Any]):
    """A shape that bodies have too, in answers: every key is there."""

    def get_fields(self) -> dict[str, Any]:
        fields = super().get_fields()
        for field in fields.values():
            field.read_only = True
        return fields


class PreferredUnits(serializers.Serializer[Any]):
    """The units that screens show; amounts are kept as they are."""

    volume = serializers.ChoiceField(VolumeUnit.choices, source="volume_unit", required=False)
    mass = serializers.ChoiceField(MassUnit.choices, source="mass_unit", required=False)
    area = serializers.ChoiceField(AreaUnit.choices, source="area_unit", required=False)
    temperature = serializers.ChoiceField(TemperatureUnit.choices, source="temperature_unit", required=False)


class CountedFaces(serializers.Serializer[Any]):
    """Which faces of a top count as its area, for jobs made from now on."""

    top = serializers.BooleanField(source="counts_top", required=False)
    edges = serializers.BooleanField(source="counts_edges", required=False)
    splash = serializers.BooleanField(source="counts_splash", required=False)
    deducts_cutouts = serializers.BooleanField(required=False)


class ShopSettings(serializers.Serializer[Any]):
    """The shop's settings. currency: ISO 4217, three capitals. time_zone: an IANA name.

    Changing either touches nothing that was posted.
    """

    name = serializers.CharField(max_length=LONGEST_NAME)
    town = serializers.CharField(max_length=LONGEST_NAME, required=False, allow_blank=True)
    currency = serializers.RegexField(r"^[A-Z]{3}$", max_length=3, required=False)
    time_zone = serializers.CharField(max_length=64, required=False)
    units = PreferredUnits(source="*", required=False)
    counts_faces = CountedFaces(source="*", required=False)
    poison_help = serializers.CharField(
        max_length=60, required=False, allow_blank=True, help_text="The Poison help number of the shop's country."
    )


class PreferredUnitsOut(AsAnswered, PreferredUnits):
    """The units that screens show."""


class CountedFacesOut(AsAnswered, CountedFaces):
    """Which faces of a top count as its area."""


class ShopSettingsOut(AsAnswered, ShopSettings):
    """The shop's settings."""

    units = PreferredUnitsOut(source="*")
    counts_faces = CountedFacesOut(source="*")


class SetUpIn(ShopSettings):
    """The shop's settings, of which the name is needed, and its first owner."""

    owner_name = serializers.CharField(max_length=LONGEST_NAME)
    username = serializers.CharField(max_length=LONGEST_USERNAME)
    password = serializers.CharField(max_length=LONGEST_PASSWORD, trim_whitespace=False, write_only=True)


class SignInIn(serializers.Serializer[Any]):
    username = serializers.CharField(max_length=LONGEST_USERNAME)
    password = serializers.CharField(max_length=LONGEST_PASSWORD, trim_whitespace=False, write_only=True)


class SignedInPerson(serializers.Serializer[Any]):
    id = serializers.IntegerField()
    name = serializers.CharField(source="get_full_name")
    username = serializers.CharField()
    role = serializers.ChoiceField(Role.choices)


class SessionOut(serializers.Serializer[Any]):
    """needs_set_up: nobody can sign in yet; `POST /api/set-up/` makes the shop and its first owner."""

    needs_set_up = serializers.BooleanField()
    person = SignedInPerson(allow_null=True)
    shop = ShopSettingsOut()


class OwnPasswordIn(serializers.Serializer[Any]):
    current = serializers.CharField(max_length=LONGEST_PASSWORD, trim_whitespace=False)
    password = serializers.CharField(max_length=LONGEST_PASSWORD, trim_whitespace=False)


class PersonIn(serializers.Serializer[Any]):
    name = serializers.CharField(max_length=LONGEST_NAME)
    username = serializers.CharField(max_length=LONGEST_USERNAME)
    role = serializers.ChoiceField(Role.choices)
    email = serializers.EmailField(required=False, allow_blank=True)
    password = serializers.CharField(
        max_length=LONGEST_PASSWORD, trim_whitespace=False, required=False, write_only=True
    )


class PersonChange(serializers.Serializer[Any]):
    """is_active: whether they may sign in. What they recorded keeps their name either way."""

    name = serializers.CharField(max_length=LONGEST_NAME, required=False)
    username = serializers.CharField(max_length=LONGEST_USERNAME, required=False)
    role = serializers.ChoiceField(Role.choices, required=False)
    email = serializers.EmailField(required=False, allow_blank=True)
    is_active = serializers.BooleanField(required=False)


class PersonOut(serializers.Serializer[Any]):
    """Crew and viewers see names, to say who poured; usernames, addresses and tokens are the owner's to see."""

    id = serializers.IntegerField()
    name = serializers.CharField(source="get_full_name")
    role = serializers.ChoiceField(Role.choices)
    is_active = serializers.BooleanField()
    username = serializers.CharField(required=False)
    email = serializers.CharField(required=False)
    has_token = serializers.BooleanField(required=False)
    last_login = serializers.DateTimeField(required=False, allow_null=True)

    def get_fields(self) -> dict[str, Any]:
        fields = super().get_fields()
        if not self.is_for_owner():
            for name in ("username", "email", "has_token", "last_login"):
                del fields[name]
        return fields

    def is_for_owner(self) -> bool:
        if getattr(self.context.get("view"), "swagger_fake_view", False):
            return True
        person = getattr(self.context.get("request"), "user", None)
        return getattr(person, "role", None) == Role.OWNER


class PasswordIn(serializers.Serializer[Any]):
    password = serializers.CharField(max_length=LONGEST_PASSWORD, trim_whitespace=False)


class TokenOut(serializers.Serializer[Any]):
    """Shown this once. Scripts send `Authorization: Token …`."""

    token = serializers.CharField()


class PersonName(serializers.Serializer[Any]):
    id = serializers.IntegerField()
    name = serializers.CharField(source="get_full_name")


class ChangeOut(serializers.Serializer[Any]):
    """One field of one record, before and after. noun: `material`, `pack`, `lot`, …; record: its id."""

    id = serializers.IntegerField()
    at = serializers.DateTimeField()
    by = PersonName()
    noun = serializers.CharField()
    record = serializers.IntegerField()
    field = serializers.CharField()
    before = serializers.CharField()
    after = serializers.CharField()
