"""Recounting: everything that must always hold of the ledger, checked against the lines themselves.

Each check gives findings: what differs, in words. Nothing here is shared with what posts, except the meaning of the
columns. The checks run set-based in the database; what reaches Python is what differs, or a few rows for each lot.
"""

from collections.abc import Callable, Iterator

from inventory.stock.verification import balances, lines, made_lots, promises, shares
from inventory.stock.verification.findings import Finding

CHECKS: dict[str, Callable[[], Iterator[str]]] = {
    "the guards over the ledger are there": promises.guards,
    "balances are the sums of their movements": balances.sums,
    "no lot was below zero at any past moment": balances.past_moments,
    "no lot was below zero, or worth something while empty, after any posting": balances.order_of_recording,
    "what came in is on hand or went": balances.identity,
    "every line is an inflow, an issue or a move, within bounds": lines.kinds,
    "every line names its lot's material, and corrects a line of its own kind": lines.references,
    "moves, openings and mixes net to zero": lines.transfers,
    "nothing is taken back more than once": lines.taken_back,
    "nothing happened before its lot came in, or after it was recorded": lines.moments,
    "every line has its day": lines.days,
    "what went into a lot is what came into it": made_lots.inputs,
    "what is traced sums to what was received": made_lots.trace,
    "a changed cost was spread in proportion": shares.revaluations,
    "counts hold": promises.counts,
    "lots stand as their bars say, and keep as their dates say": promises.lots,
}


def verify() -> Iterator[Finding]:
    """Everything that differs, check by check."""
    for check, find in CHECKS.items():
        for words in find():
            yield Finding(check, words)


__all__ = ["CHECKS", "Finding", "verify"]
