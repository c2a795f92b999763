"""Whether the shop can work: its database answers, its ledger is guarded."""

import tomllib
from functools import cache
from typing import Any

from django.conf import settings
from django.db import DatabaseError, connection
from drf_spectacular.utils import extend_schema
from rest_framework import serializers
from rest_framework.request import Request
from rest_framework.response import Response

from inventory.rest.views import TradeView
from inventory.stock.triggers import missing_triggers


class HealthOut(serializers.Serializer[Any]):
    """is_well: all of the below is. is_ledger_guarded: the triggers that keep the ledger append-only are there."""

    is_well = serializers.BooleanField()
    is_database_reachable = serializers.BooleanField()
    is_ledger_guarded = serializers.BooleanField()
    version = serializers.CharField()


class Health(TradeView):
    """GET /api/health/

    Whether the shop can work, for whoever watches over the server. 503 where something is missing.
    """

    is_open_to_all = True
    authentication_classes = ()
    operations = {"GET": "read_health"}

    @extend_schema(responses={200: HealthOut, 503: HealthOut})
    def get(self, request: Request) -> Response:
        health = health_now()
        return self.answer(HealthOut, health, 200 if health["is_well"] else 503)


def health_now() -> dict[str, Any]:
    try:
        missing = missing_triggers(connection)
    except DatabaseError:
        return health(is_database_reachable=False, is_ledger_guarded=False)
    return health(is_database_reachable=True, is_ledger_guarded=not missing)


def health(**checks: bool) -> dict[str, Any]:
    return {"is_well": all(checks.values()), **checks, "version": version()}


@cache
def version() -> str:
    project = tomllib.loads((settings.BASE_DIR / "pyproject.toml").read_text())
    return str(project["project"]["version"])
