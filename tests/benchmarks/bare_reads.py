"""What the reports need from the database, in hand-written SQL through the driver, every row fetched."""

from collections.abc import Sequence
from typing import Any

from django.db import connection

REACHED = (
    "WITH RECURSIVE reached (lot) AS (SELECT {start} UNION "
    "SELECT m.into_lot_id FROM reached JOIN stock_movement m ON m.lot_id = reached.lot "
    "WHERE m.into_lot_id IS NOT NULL) "
)
WENT_IN = (
    "WITH RECURSIVE reached (lot) AS ({start} UNION "
    "SELECT m.lot_id FROM reached JOIN stock_movement m ON m.into_lot_id = reached.lot) "
)
OF_POUR = (
    "SELECT pp.pour_id AS pour, MIN({month}) AS low, MAX({month}) AS high FROM jobs_job j "
    "JOIN jobs_piece p ON p.job_id = j.id JOIN pours_pourpiece pp ON pp.piece_id = p.id "
    "WHERE j.finished_on IS NOT NULL AND j.purpose = 'customer' GROUP BY pp.pour_id"
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
        reached = REACHED.format(start="CAST(%s AS bigint)")
        return (
            self.rows(
                f"{reached} SELECT m.lot_id, m.into_lot_id, -SUM(m.quantity) FROM reached JOIN stock_movement m "
                "ON m.lot_id = reached.lot WHERE m.into_lot_id IS NOT NULL GROUP BY m.lot_id, m.into_lot_id",
                [lot],
            )
            + self.rows(
                f"{reached} SELECT m.lot_id, m.cause, m.kind, SUM(m.quantity) FROM reached JOIN stock_movement m "
                "ON m.lot_id = reached.lot WHERE m.into_lot_id IS NULL GROUP BY m.lot_id, m.cause, m.kind",
                [lot],
            )
            + self.rows(
                f"{reached} SELECT o.id, o.number, o.layer, o.poured_at, p.id, p.number, p.name, j.id, j.number, "
                "j.title, c.id, c.name FROM (SELECT DISTINCT m.cause FROM reached JOIN stock_movement m "
                "ON m.lot_id = reached.lot WHERE m.cause IS NOT NULL) u JOIN pours_pour o ON o.id = u.cause "
                "JOIN pours_pourpiece pp ON pp.pour_id = o.id JOIN jobs_piece p ON p.id = pp.piece_id "
                "JOIN jobs_job j ON j.id = p.job_id JOIN jobs_customer c ON c.id = j.customer_id",
                [lot],
            )
        )

    def sources_of_job(self, job: int) -> int:
        """What the job's pours took, of which lots, what went into those, and how much ever was in each."""
        pours = (
            "SELECT DISTINCT pp.pour_id FROM jobs_piece p JOIN pours_pourpiece pp ON pp.piece_id = p.id "
            "WHERE p.job_id = %s"
        )
        reached = WENT_IN.format(start=f"SELECT DISTINCT m.lot_id FROM stock_movement m WHERE m.cause IN ({pours})")
        return (
            self.rows(
                "SELECT m.cause, m.lot_id, m.kind, -SUM(m.quantity) FROM stock_movement m "
                f"WHERE m.cause IN ({pours}) GROUP BY m.cause, m.lot_id, m.kind",
                [job],
            )
            + self.rows(
                f"SELECT pp.pour_id, p.id, p.area_sqft FROM pours_pourpiece pp JOIN jobs_piece p "
                f"ON p.id = pp.piece_id WHERE pp.pour_id IN ({pours})",
                [job],
            )
            + self.rows(
                f"{reached} SELECT m.lot_id, m.into_lot_id, -SUM(m.quantity) FROM reached JOIN stock_movement m "
                "ON m.into_lot_id = reached.lot GROUP BY m.lot_id, m.into_lot_id",
                [job],
            )
            + self.rows(
                f"{reached} SELECT l.id, l.number, l.lot_number, l.received_on, l.use_by, m.name, (SELECT "
                "SUM(i.quantity) FROM stock_movement i WHERE i.lot_id = l.id AND i.quantity > 0) FROM reached "
                "JOIN stock_lot l ON l.id = reached.lot JOIN catalog_material m ON m.id = l.material_id",
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
            "SELECT CASE WHEN o.low = o.high THEN o.low ELSE -o.pour END, t.kind, m.kind, -SUM(m.value) "
            f"FROM ({OF_POUR.format(month=month)}) o JOIN stock_movement m ON m.cause = o.pour "
            "JOIN catalog_material t ON t.id = m.material_id WHERE m.kind IN ('used', 'wasted') "
            "GROUP BY 1, t.kind, m.kind",
        ) + self.rows(
            f"SELECT {month}, COUNT(*), SUM(p.area_sqft) FROM jobs_piece p JOIN jobs_job j ON j.id = p.job_id "
            "WHERE j.finished_on IS NOT NULL AND j.purpose = 'customer' GROUP BY 1"
        )
