from drf_spectacular.utils import extend_schema
from rest_framework.request import Request
from rest_framework.response import Response

from inventory.catalog import queries
from inventory.catalog.serializers import UnitOut
from inventory.rest.filters import refuse_unknown
from inventory.rest.views import TradeView


class Units(TradeView):
    """GET /api/units/

    The units in which quantities are said, all on one page.
    """

    operations = {"GET": "list_units"}

    @extend_schema(responses=UnitOut(many=True))
    def get(self, request: Request) -> Response:
        refuse_unknown(request, frozenset())
        return self.answer(UnitOut, queries.units(), many=True)
