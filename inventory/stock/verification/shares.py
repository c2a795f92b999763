"""Whether changes of cost were spread as they must be."""

from collections.abc import Iterator
from itertools import groupby

from inventory.calc.apportion import apportion
from inventory.stock.lines import IS_ISSUE
from inventory.stock.verification.findings import ask, money

# The last posting that changed a lot's money alone: right after it every part had its largest-remainder share.
LAST_REVALUED = (
    "(SELECT lot_id AS lot, MAX(posting_id) AS posting FROM stock_movement WHERE quantity = 0 GROUP BY lot_id) revalued"
)


def revaluations() -> Iterator[str]:
    """After a charge, credit or price every part of a lot had its share, by quantity, of the lot's new total."""
    rows = ask(
        "SELECT * FROM ("
        "SELECT lot_id AS lot, 0 AS sort, place_id AS part, SUM(quantity) AS quantity, SUM(value) AS value "
        f"FROM stock_movement JOIN {LAST_REVALUED} ON revalued.lot = lot_id WHERE posting_id <= revalued.posting "
        "GROUP BY lot_id, place_id HAVING SUM(quantity) > 0 "
        "UNION ALL SELECT lot_id, 1, COALESCE(corrects_id, id), -SUM(quantity), -SUM(value) "
        f"FROM stock_movement JOIN {LAST_REVALUED} ON revalued.lot = lot_id "
        f"WHERE posting_id <= revalued.posting AND {IS_ISSUE} "
        "GROUP BY lot_id, COALESCE(corrects_id, id) HAVING SUM(quantity) <> 0) parts ORDER BY lot, sort, part"
    )
    for lot, group in groupby(rows, key=lambda row: row[0]):
        parts = [(sort, part, int(amount), int(value)) for _, sort, part, amount, value in group]
        total = sum(value for *_, value in parts)
        if min(amount for _, _, amount, _ in parts) < 0:
            yield f"lot {lot}: more was taken back of it than was taken, so that it has no shares"
            continue
        shares = apportion(total, [amount for _, _, amount, _ in parts])
        for (sort, part, _, value), share in zip(parts, shares, strict=True):
            if value != share:
                name = f"movement {part}" if sort else f"the stock at place {part}"
                yield f"lot {lot}: {name} got {money(value)} of {money(total)}, its share is {money(share)}"
