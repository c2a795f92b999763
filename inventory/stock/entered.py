"""From what a body says of lots to the lots themselves and quantities in their stock units."""

from collections.abc import Mapping, Sequence
from decimal import Decimal
from typing import Any

from inventory.calc.quantities import Typed
from inventory.catalog.quantities import stock_quantity
from inventory.shop.problems import bad_fields
from inventory.stock.actions import Counted, Input
from inventory.stock.models import Lot


def quantity_of(lot: Lot, typed: Typed | None, *, pointer: str = "/quantity") -> Decimal | None:
    """What was said of a lot in its stock unit; None, for all of it, stays None. Raises UnitMismatch, BadBody."""
    return None if typed is None else stock_quantity(typed, material=lot.material, pointer=pointer)


def counted_lines(lines: Sequence[Mapping[str, Any]]) -> list[Counted]:
    """The lines of a count. Three SQL statements. Raises BadBody, UnitMismatch."""
    lots = _lots_named(lines, "/lines")
    return [
        Counted(
            lots[line["lot"]],
            stock_quantity(line["quantity"], material=lots[line["lot"]].material, pointer=f"/lines/{index}/quantity"),
            line["reason"],
        )
        for index, line in enumerate(lines)
    ]


def blend_inputs(inputs: Sequence[Mapping[str, Any]]) -> list[Input]:
    """What went into a mix. Three SQL statements. Raises BadBody, UnitMismatch."""
    lots = _lots_named(inputs, "/inputs")
    return [
        Input(
            lots[line["lot"]],
            quantity_of(lots[line["lot"]], line["quantity"], pointer=f"/inputs/{index}/quantity"),
            line["place"],
        )
        for index, line in enumerate(inputs)
    ]


def _lots_named(lines: Sequence[Mapping[str, Any]], pointer: str) -> dict[int, Lot]:
    wanted = {line["lot"] for line in lines}
    found = Lot.objects.select_related("material").prefetch_related("material__measures").in_bulk(wanted)
    missing = [
        (f"{pointer}/{index}/lot", f"There is no such lot: {line['lot']}.")
        for index, line in enumerate(lines)
        if line["lot"] not in found
    ]
    if missing:
        raise bad_fields(missing)
    return found
