"""What a body may say: the keys that are known, and nothing besides. A misspelt key would otherwise be passed over."""

from collections.abc import Iterator, Mapping
from typing import Any

from rest_framework import serializers

from inventory.rest.pointers import pointer
from inventory.rest.problems import BadBody


def refuse_unknown_keys(serializer: Any, body: Any) -> None:
    """Raise BadBody for each key that the serializer, or one nested in it, does not know."""
    errors = list(unknown_keys(serializer, body, ()))
    if errors:
        more = f" And {len(errors) - 1} more." if len(errors) > 1 else ""
        raise BadBody(f"{errors[0]['pointer']}: {errors[0]['detail']}{more}", errors=errors)


def unknown_keys(serializer: Any, body: Any, path: tuple[str | int, ...]) -> Iterator[dict[str, str]]:
    if isinstance(serializer, serializers.ListSerializer | serializers.ListField):
        if isinstance(body, list):
            for index, member in enumerate(body):
                yield from unknown_keys(serializer.child, member, (*path, index))
    elif isinstance(serializer, serializers.Serializer) and isinstance(body, Mapping):
        for key, value in body.items():
            field = serializer.fields.get(key)
            if field is None:
                known = ", ".join(name for name, field in serializer.fields.items() if not field.read_only)
                yield {"pointer": pointer((*path, key)), "detail": f"There is no such field here. There are: {known}."}
            else:
                yield from unknown_keys(field, value, (*path, key))
