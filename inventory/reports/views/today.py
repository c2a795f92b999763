"""The first page over HTTP."""

from typing import Any

from inventory.reports.queries.today import Today, needs_a_hand
from inventory.reports.serializers.today import TodayOut
from inventory.rest.money import sees_money
from inventory.rest.problems import Role
from inventory.rest.views import ReportView


class NeedsAHand(ReportView):
    """GET /api/today/

    What needs a hand: pours, materials below their reorder point, lots past their use-by or on hold, deliveries without
    a price. Each row says which act settles it.
    """

    permission = Role.VIEWER
    operations = {"GET": "today"}
    serializer_class = TodayOut

    def report(self, **query: Any) -> Today:
        return needs_a_hand(is_owner=sees_money(self.request.user))
