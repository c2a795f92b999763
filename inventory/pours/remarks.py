"""What was seen and done at a pour: conditions and ticks, each with how it is known."""

from collections.abc import Mapping
from typing import Any

from inventory.pours.models import Provenance


def kept(remarks: Mapping[str, Mapping[str, Any]]) -> dict[str, dict[str, Any]]:
    """What is kept of them: everything but what nobody touched, which was only filled in from the last pour.

    remarks: name -> {"value", "unit"?, "provenance"}.
    """
    return {name: dict(remark) for name, remark in remarks.items() if remark["provenance"] != Provenance.ASSUMED}
