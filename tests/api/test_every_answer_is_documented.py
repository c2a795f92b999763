"""The whole API against its own schema: random calls on a stocked shop get no 500 and no answer it does not name."""

from collections.abc import Iterator
from typing import Any

import pytest
import schemathesis
from django.core.signals import request_finished, request_started
from django.core.wsgi import get_wsgi_application
from django.db import close_old_connections
from drf_spectacular.generators import SchemaGenerator
from hypothesis import HealthCheck, Phase, settings
from schemathesis.checks import not_a_server_error
from schemathesis.specs.openapi.checks import (
    content_type_conformance,
    response_headers_conformance,
    response_schema_conformance,
    status_code_conformance,
)

from tests.api.conftest import World
from tests.api.stocked import Stocked

pytestmark = pytest.mark.django_db

CHECKS = [
    not_a_server_error,
    status_code_conformance,
    content_type_conformance,
    response_headers_conformance,
    response_schema_conformance,
]
described = schemathesis.openapi.from_dict(
    SchemaGenerator(urlconf="inventory.config.urls").get_schema(request=None, public=True)
)
described.app = get_wsgi_application()


@pytest.fixture
def one_connection() -> Iterator[None]:
    """The application closes its connection at the end of a request; the test's own must stay."""
    for signal in (request_started, request_finished):
        signal.disconnect(close_old_connections)
    yield
    for signal in (request_started, request_finished):
        signal.connect(close_old_connections)


@described.exclude(path_regex="^/api/schema/").parametrize()
@settings(
    max_examples=25,
    deadline=None,
    derandomize=True,
    phases=[Phase.explicit, Phase.generate],
    suppress_health_check=list(HealthCheck),
)
def test_no_call_gets_an_answer_that_the_schema_does_not_name(case: Any, world: World, one_connection: None) -> None:
    name_what_is_there(case, world.stocked)
    case.call_and_validate(headers={"Authorization": f"Token {world.tokens['owner']}"}, checks=CHECKS)


def name_what_is_there(case: Any, stocked: Stocked) -> None:
    """Half of the calls name a record that exists, so that they come past the 404."""
    noun = case.path.strip("/").split("/")[1]
    given = case.path_parameters or {}
    for key in given:
        if noun in stocked.ids and isinstance(given[key], int) and given[key] % 2 == 0:
            given[key] = stocked.ids[noun]
