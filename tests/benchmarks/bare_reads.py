"""What the reports need from the database, in hand-written SQL through the driver, every row fetched.

The tables are joined in the order in which they are written (CROSS JOIN holds SQLite to it): from the few to the many.
"""

from collections.abc import Sequence
from typing import Any

from django.db import connection

REACHED = (
    "WITH RECURSIVE reached (lot) AS (SELECT CAST(%s AS bigint) UNION SELECT m.into_lot_id FROM reached "
    "CROSS JOIN stock_movement m WHERE m.lot_id = reached.lot AND m.into_lot_id IS NOT NULL) "
)
POURS = (
    "SELECT DISTINCT pp.pour_id FROM jobs_piece p CROSS JOIN pours_pourpiece pp "
    "WHERE p.job_id = %s AND pp.piece_id = p.id"
)
WENT_IN = (
    f"WITH RECURSIVE poured (pour) AS ({POURS}), reached (lot) AS (SELECT m.lot_id FROM poured "
    "CROSS JOIN stock_movement m WHERE m.cause = poured.pour UNION SELECT m.lot_id FROM reached "
    "CROSS JOIN stock_movement m WHERE m.into_lot_id = reached.lot) "
)
INFLOW = "i.kind IN ('received', 'charged', 'opened', 'blended', 'counted')"
OF_POUR = (
    "SELECT pp.pour_id AS pour, MIN({month}) AS low, MAX({month}) AS high FROM jobs_job j "
    "CROSS JOIN jobs_piece p CROSS JOIN pours_pourpiece pp WHERE p.job_id = j.id AND pp.piece_id = p.id "
    "AND j.finished_on IS NOT NULL AND j.purpose = 'customer' GROUP BY pp.pour_id"
)


class BareReads:
    """Each method gives how many rows came."""

    def __init__(self) -> None:
        connection.ensure_connection()
        self.is_postgresql = connection.vendor == "postgresql"
        self.cursor: Any = connection.connection.cursor()

    def rows(self, sql: str, parameters: Sequence[Any] = ()) -> int:
        self.cursor.execute(sql if self.is_postgresql else sql.replace("%s", "?"), parameters)
        return len(self.cursor.fetchall())

    def uses_of_lot(self, lot: int) -> int:
        """The lots reached through blends, what became of each, and the pours, tops, jobs and customers."""
        return (
            self.rows(
                f"{REACHED} SELECT m.lot_id, m.into_lot_id, -SUM(m.quantity) FROM reached CROSS JOIN stock_movement m "
                "WHERE m.lot_id = reached.lot AND m.into_lot_id IS NOT NULL GROUP BY m.lot_id, m.into_lot_id",
                [lot],
            )
            + self.rows(
                f"{REACHED} SELECT m.lot_id, m.cause, m.kind, SUM(m.quantity) FROM reached CROSS JOIN stock_movement m "
                "WHERE m.lot_id = reached.lot AND m.into_lot_id IS NULL GROUP BY m.lot_id, m.cause, m.kind",
                [lot],
            )
            + self.rows(
                f"{REACHED}, used (pour) AS (SELECT DISTINCT m.cause FROM reached CROSS JOIN stock_movement m "
                "WHERE m.lot_id = reached.lot AND m.cause IS NOT NULL) "
                "SELECT o.id, o.number, o.layer, o.poured_at, p.id, p.number, p.name, p.area_sqft, pp.share_percent, "
                "j.id, j.number, j.title, c.id, c.name FROM used CROSS JOIN pours_pour o "
                "CROSS JOIN pours_pourpiece pp CROSS JOIN jobs_piece p CROSS JOIN jobs_job j "
                "CROSS JOIN jobs_customer c WHERE o.id = used.pour AND pp.pour_id = o.id AND p.id = pp.piece_id "
                "AND j.id = p.job_id AND c.id = j.customer_id",
                [lot],
            )
        )

    def sources_of_job(self, job: int) -> int:
        """What the job's pours took, of which lots, what went into those, and how much ever was in each."""
        poured = f"WITH poured (pour) AS ({POURS}) "
        return (
            self.rows(
                f"{poured} SELECT m.cause, m.lot_id, -SUM(m.quantity) FROM poured CROSS JOIN stock_movement m "
                "WHERE m.cause = poured.pour GROUP BY m.cause, m.lot_id",
                [job],
            )
            + self.rows(
                f"{poured} SELECT o.id, o.number, o.layer, o.poured_at, p.id, p.area_sqft, pp.share_percent "
                "FROM poured CROSS JOIN pours_pour o CROSS JOIN pours_pourpiece pp CROSS JOIN jobs_piece p "
                "WHERE o.id = poured.pour AND pp.pour_id = poured.pour AND p.id = pp.piece_id",
                [job],
            )
            + self.rows(
                f"{WENT_IN} SELECT m.lot_id, m.into_lot_id, -SUM(m.quantity) FROM reached CROSS JOIN stock_movement m "
                "WHERE m.into_lot_id = reached.lot GROUP BY m.lot_id, m.into_lot_id",
                [job],
            )
            + self.rows(
                f"{WENT_IN} SELECT l.id, l.number, l.lot_number, l.received_on, l.use_by, l.status, t.name, t.kind, "
                f"s.name, (SELECT SUM(i.quantity) FROM stock_movement i WHERE i.lot_id = l.id AND {INFLOW}) "
                "FROM reached CROSS JOIN stock_lot l JOIN catalog_material t ON t.id = l.material_id "
                "LEFT JOIN purchasing_deliveryline d ON d.lot_id = COALESCE(l.opened_from_id, l.id) "
                "LEFT JOIN purchasing_delivery e ON e.id = d.delivery_id "
                "LEFT JOIN catalog_supplier s ON s.id = e.supplier_id WHERE l.id = reached.lot",
                [job],
            )
        )

    def monthly_cost(self) -> int:
        """Money by month and kind of material, the area of the tops by month, and the pours that span two months."""
        if self.is_postgresql:
            month = "(extract(year FROM j.finished_on)::int * 12 + extract(month FROM j.finished_on)::int)"
        else:
            month = "(substr(j.finished_on, 1, 4) * 12 + substr(j.finished_on, 6, 2))"
        return self.rows(
            "SELECT CASE WHEN o.low = o.high THEN o.low ELSE -o.pour END, l.material_id, m.kind, -SUM(m.value) "
            f"FROM ({OF_POUR.format(month=month)}) o CROSS JOIN stock_movement m CROSS JOIN stock_lot l "
            "WHERE m.cause = o.pour AND l.id = m.lot_id AND m.kind IN ('used', 'wasted') "
            "GROUP BY 1, l.material_id, m.kind",
        ) + self.rows(
            f"SELECT {month}, COUNT(*), SUM(p.area_sqft) FROM jobs_job j CROSS JOIN jobs_piece p "
            "WHERE p.job_id = j.id AND j.finished_on IS NOT NULL AND j.purpose = 'customer' GROUP BY 1"
        )
