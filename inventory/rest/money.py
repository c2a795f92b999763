"""Who sees money: the owner. For crew and viewer the keys are absent, in answers, exports, filters and orderings."""

from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from rest_framework import serializers

from inventory.rest.permissions import role_of
from inventory.rest.problems import Role


def sees_money(person: Any) -> bool:
    """Whether money may be shown to this person."""
    role = role_of(person)
    return role is not None and role.covers(Role.OWNER)


class MoneyKeys(serializers.Serializer[Any]):
    """A serializer some of whose keys are money: named in `money_fields`, here or in Meta.

    They leave the answer, and are refused in a body, unless the request's person sees money. Without a request in the
    context there is no money either.
    """

    money_fields: ClassVar[tuple[str, ...]] = ()

    @property
    def _readable_fields(self) -> list[Any]:
        hidden = set() if shows_money(self.context) else money_keys_of(self)
        return [field for field in super()._readable_fields if field.field_name not in hidden]

    def to_internal_value(self, data: Any) -> Any:
        if isinstance(data, Mapping) and not shows_money(self.context):
            given = [key for key in data if key in money_keys_of(self)]
            if given:
                raise serializers.ValidationError(dict.fromkeys(given, "Only the owner enters money. Leave this out."))
        return super().to_internal_value(data)


def money_keys_of(serializer: Any) -> set[str]:
    """The keys of a serializer, or of its class, that are money."""
    meta = getattr(serializer, "Meta", None)
    return {*getattr(serializer, "money_fields", ()), *getattr(meta, "money_fields", ())}


def shows_money(context: Mapping[str, Any]) -> bool:
    """Whether a serializer with this context shows money: to its owner, and in the schema."""
    if getattr(context.get("view"), "swagger_fake_view", False):
        return True
    return sees_money(getattr(context.get("request"), "user", None))


def without_money(value: Any, money_keys: Iterable[str]) -> Any:
    """A JSON value without these keys, at any depth: for report rows that no serializer shapes.

    >>> without_money({"rows": [{"area_sqft": "30", "cost": "10.0000"}]}, {"cost"})
    {'rows': [{'area_sqft': '30'}]}
    """
    keys = frozenset(money_keys)
    if isinstance(value, Mapping):
        return {key: without_money(inner, keys) for key, inner in value.items() if key not in keys}
    if isinstance(value, list | tuple):
        return [without_money(inner, keys) for inner in value]
    return value
