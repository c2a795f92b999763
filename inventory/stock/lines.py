"""Which lines of the ledger count as what. Plain SQL over the columns of a movement.

A lot's *inflow* is what came into it, an *issue* what left it; a move only changes its place. Every line is exactly one
of the three, and a line that takes another back counts as what it takes back.
"""

IS_INFLOW = (
    "(kind IN ('received', 'charged') OR (kind IN ('opened', 'blended') AND into_lot_id IS NULL) "
    "OR (kind = 'counted' AND quantity > 0 AND corrects_id IS NULL))"
)
IS_ISSUE = (
    "(kind IN ('used', 'wasted', 'written_off', 'returned', 'given') "
    "OR (kind IN ('opened', 'blended') AND into_lot_id IS NOT NULL) "
    "OR (kind = 'counted' AND (quantity < 0 OR corrects_id IS NOT NULL)))"
)
IS_GAIN = "(kind = 'counted' AND quantity > 0 AND corrects_id IS NULL)"

# Said beside IS_INFLOW, it lets both databases use the index over the kinds that inflows have.
MAY_BE_INFLOW = "kind IN ('received', 'charged', 'opened', 'blended', 'counted')"
