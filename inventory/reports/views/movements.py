"""In and out, filtered by pours, tops, jobs and customers."""

from inventory.reports.filters import MovementFilters
from inventory.stock.views.ledger import Movements


class MovementsAcrossFloors(Movements):
    """GET /api/movements/

    The ledger's lines, the latest first; as JSON, CSV or XLSX.
    """

    filterset_class = MovementFilters
