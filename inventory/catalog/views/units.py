from collections.abc import Sequence
from typing import Any

from rest_framework.request import Request

from inventory.calc.units import Unit
from inventory.catalog import queries
from inventory.catalog.serializers import UnitOut
from inventory.rest.filters import refuse_unknown
from inventory.rest.views import ListView


class Units(ListView):
    """GET /api/units/

    The units in which quantities are said; one page holds them all.
    """

    serializer_class = UnitOut
    filter_backends = ()

    def get_queryset(self) -> Sequence[Unit]:  # type: ignore[override]  # units are written down, not kept in a table
        return queries.units()

    def get(self, request: Request, *args: Any, **kwargs: Any) -> Any:
        refuse_unknown(request, frozenset({"page", "page_size"}))
        return super().get(request, *args, **kwargs)
