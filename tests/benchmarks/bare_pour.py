"""Completing a planned pour in hand-written SQL: what the work needs, in one transaction, through the driver alone.

It locks, reads what the rules ask to be read, takes from the lot that is good for the shortest time, and writes all
that the app writes. It checks nothing that a person could have typed wrong.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime
from typing import Any
from uuid import uuid4

from django.db import connection

from inventory.pours.models import Usage
from tests.benchmarks.loading import Sheet, as_text
from tests.benchmarks.world import DENSITY, PERSON

USAGE = Sheet(
    Usage, "pour_id", "position", "material_id", "lot_id", "place_id", "movement_id", "quantity", "typed_amount",
    "typed_unit", "density_g_per_ml", "is_waste", "provenance", "lot_provenance", "lot_status",
)  # fmt: skip
MOVEMENT = (
    "INSERT INTO stock_movement (posting_id, kind, lot_id, material_id, place_id, quantity, value, happened_at, "
    "happened_on, cause) VALUES "
)
CHANGE = (
    "UPDATE stock_balance SET quantity = stock_balance.quantity + change.quantity, "
    "value = stock_balance.value + change.value FROM change "
    "WHERE stock_balance.lot_id = change.lot AND stock_balance.place_id = change.place"
)


@dataclass(frozen=True, slots=True)
class Taken:
    """So much of a lot for a planned line; quantity in millionths, value in ten-thousandths, both > 0."""

    position: int
    material: int
    lot: int
    quantity: int
    value: int
    typed_amount: str
    typed_unit: str
    is_waste: bool
    provenance: str


class BarePour:
    """The statements, on the driver's own connection."""

    def __init__(self) -> None:
        connection.ensure_connection()
        self.is_postgresql = connection.vendor == "postgresql"
        self.cursor: Any = connection.connection.cursor()

    def run(self, sql: str, parameters: Sequence[Any] = ()) -> list[Any]:
        self.cursor.execute(sql if self.is_postgresql else sql.replace("%s", "?"), parameters)
        return list(self.cursor.fetchall()) if self.cursor.description else []

    def complete(self, pour: int) -> None:
        now = datetime.now(UTC)
        at, day = now if self.is_postgresql else as_text(now), as_text(now.date())
        self.run("BEGIN" if self.is_postgresql else "BEGIN IMMEDIATE")
        lock = " FOR NO KEY UPDATE" if self.is_postgresql else ""
        place = self.run(f"SELECT place_id FROM pours_pour WHERE id = %s AND status = 'planned'{lock}", [pour])[0][0]
        planned = self.run(
            "SELECT u.position, u.material_id, u.quantity, u.typed_amount, u.typed_unit, u.is_waste, u.provenance, "
            "m.density_g_per_ml, m.single_lot_per_job FROM pours_plannedusage u "
            "JOIN catalog_material m ON m.id = u.material_id WHERE u.pour_id = %s ORDER BY u.position",
            [pour],
        )
        lots = self.open_lots([line[1] for line in planned], place, at, lock)
        preferred = self.lots_of_the_job(pour, [line[1] for line in planned if line[8]])
        taken = [self.take(line, lots, preferred, now.date()) for line in planned]
        self.write(pour, place, taken, at, day)
        self.run("COMMIT")

    def open_lots(self, materials: Sequence[int], place: int, at: Any, lock: str) -> list[list[Any]]:
        """[lot, material, use-by, quantity, money] of all that lies there, under lock, less what later times took."""
        these = ", ".join(["%s"] * len(materials))
        facts = self.run(
            f"SELECT id, material_id, use_by FROM stock_lot WHERE status = 'usable' AND material_id IN ({these}) "
            "AND EXISTS (SELECT 1 FROM stock_balance b WHERE b.lot_id = stock_lot.id AND b.place_id = %s "
            f"AND b.quantity > 0) ORDER BY id{lock}",
            [*materials, place],
        )
        ids = [row[0] for row in facts]
        these = ", ".join(["%s"] * len(ids))
        stock = {
            lot: (quantity, value)
            for lot, quantity, value in self.run(
                f"SELECT lot_id, quantity, value FROM stock_balance WHERE place_id = %s AND lot_id IN ({these})",
                [place, *ids],
            )
        }
        self.run(f"SELECT lot_id, status, since FROM stock_statusevent WHERE lot_id IN ({these})", ids)
        self.run(
            f"SELECT lot_id, happened_at, SUM(quantity) FROM stock_movement WHERE lot_id IN ({these}) AND "
            f"happened_at > %s GROUP BY lot_id, happened_at UNION ALL SELECT lot_id, counted_at, 0 FROM "
            f"stock_stockcountline WHERE lot_id IN ({these}) AND counted_at > %s AND is_asserted",
            [*ids, at, *ids, at],
        )  # nothing, as the pour is now
        return [[*row, *stock[row[0]]] for row in facts]

    def lots_of_the_job(self, pour: int, materials: Sequence[int]) -> set[int]:
        """The lots of colour-matched materials that the pour's jobs used before."""
        if not materials:
            return set()
        rows = self.run(
            "SELECT DISTINCT u.lot_id FROM pours_pourpiece mine CROSS JOIN jobs_piece p CROSS JOIN jobs_piece q "
            "CROSS JOIN pours_pourpiece other CROSS JOIN pours_usage u WHERE mine.pour_id = %s "
            "AND p.id = mine.piece_id AND q.job_id = p.job_id AND other.piece_id = q.id "
            "AND u.pour_id = other.pour_id AND NOT u.is_taken_back "
            f"AND +u.material_id IN ({', '.join(['%s'] * len(materials))})",  # + keeps SQLite from going by material
            [pour, *materials],
        )
        return {row[0] for row in rows}

    def take(self, line: Any, lots: list[list[Any]], preferred: set[int], today: date) -> Taken:
        position, material, wanted, amount, unit, is_waste, provenance, *_ = line
        good = [lot for lot in lots if lot[1] == material and lot[3] >= wanted and str(lot[2] or "9") >= str(today)]
        chosen = min(good, key=lambda lot: (lot[0] not in preferred, str(lot[2] or "9"), lot[0]))
        value = chosen[4] if wanted == chosen[3] else round(chosen[4] * wanted / chosen[3])
        chosen[3] -= wanted
        chosen[4] -= value
        return Taken(position, material, chosen[0], wanted, value, amount, unit, bool(is_waste), provenance)

    def write(self, pour: int, place: int, taken: Sequence[Taken], at: Any, day: str) -> None:
        posting = self.run(
            "INSERT INTO stock_posting (uuid, kind, reason, by_id, recorded_at) VALUES (%s, 'used', '', %s, %s) "
            "RETURNING id",
            [uuid4() if self.is_postgresql else uuid4().hex, PERSON, at],
        )[0][0]
        movements = self.run(
            f"{MOVEMENT} {', '.join(['(%s, %s, %s, %s, %s, %s, %s, %s, %s, %s)'] * len(taken))} RETURNING id",
            [
                value
                for line in taken
                for value in (
                    posting, "wasted" if line.is_waste else "used", line.lot, line.material, place, -line.quantity,
                    -line.value, at, day, pour,
                )
            ],
        )  # fmt: skip
        self.change_balances(place, taken)
        row = f"({', '.join(['%s'] * len(USAGE.columns))})"
        self.run(
            f"INSERT INTO pours_usage ({', '.join(USAGE.columns)}) VALUES {', '.join([row] * len(taken))}",
            [
                value
                for line, movement in zip(taken, sorted(movements), strict=True)
                for value in (
                    pour, line.position, line.material, line.lot, place, movement[0], line.quantity, line.typed_amount,
                    line.typed_unit, DENSITY, line.is_waste, line.provenance, "assumed", "usable", *USAGE.rest,
                )
            ],
        )  # fmt: skip
        self.run(
            "UPDATE pours_pour SET status = 'completed', poured_at = %s, version = version + 1 WHERE id = %s",
            [at, pour],
        )
        self.run("DELETE FROM stock_reservation WHERE cause = %s", [pour])

    def change_balances(self, place: int, taken: Sequence[Taken]) -> None:
        sums: dict[int, tuple[int, int]] = {}
        for line in taken:
            quantity, value = sums.get(line.lot, (0, 0))
            sums[line.lot] = quantity - line.quantity, value - line.value
        number = "%s::bigint" if self.is_postgresql else "%s"
        rows = ", ".join([f"({', '.join([number] * 4)})"] * len(sums))
        self.run(
            f"WITH change (lot, place, quantity, value) AS (VALUES {rows}) {CHANGE}",
            [value for lot, change in sorted(sums.items()) for value in (lot, place, *change)],
        )
