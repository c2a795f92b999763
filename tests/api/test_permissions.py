"""Who may do what: every operation of the API, every role, and nobody at all.

The table names the least role of each operation; a new operation fails here until somebody decides.
"""

from typing import Any

import pytest
from drf_spectacular.generators import SchemaGenerator
from rest_framework.test import APIClient

from inventory.rest.problems import Role
from tests.api.conftest import World
from tests.api.stocked import Stocked

pytestmark = pytest.mark.django_db

OPEN = "anybody"
VIEWER, CREW, OWNER = Role.VIEWER.value, Role.CREW.value, Role.OWNER.value
ROLES = [OPEN, VIEWER, CREW, OWNER]

LEAST: dict[str, set[str]] = {
    OPEN: {"read_session", "sign_in", "sign_out", "set_up_shop", "read_health", "spectacular_api"},
    CREW: {
        "add_customer", "add_job", "add_pieces", "add_to_pour", "blend", "cancel_pour", "change_customer", "change_job",
        "change_piece", "change_pour", "complete_pour", "correct_pour", "count_place", "empty_lot", "finish_job",
        "give_lot", "hand_over_job", "hold_lot", "move_lot", "note_lot", "open_lot", "plan_pour", "receive_delivery",
        "replace_customer", "replace_job", "replace_piece", "reverse_pour", "return_lot", "scrap_piece", "undo_blend",
        "undo_opening", "unscrap_piece", "write_off_lot", "undo_stock_count", "reverse_posting",
        "change_lot", "replace_lot", "correct_delivery", "reverse_delivery", "add_place", "archive_customer",
        "unarchive_customer", "delete_customer", "archive_job", "unarchive_job", "delete_job", "delete_piece",
    },
}  # fmt: skip
READS_OF_OWNERS = {"list_changes"}
OWN = {"change_own_password"}


def operations() -> list[tuple[str, str, str]]:
    """(operation, method, path), in the schema's order."""
    paths: dict[str, Any] = SchemaGenerator(urlconf="inventory.config.urls").get_schema(request=None, public=True)[
        "paths"
    ]
    return [
        (found["operationId"], method, path)
        for path, methods in paths.items()
        for method, found in methods.items()
        if isinstance(found, dict)
    ]


def least_role(operation: str, method: str) -> str:
    for role, names in LEAST.items():
        if operation in names:
            return role
    if operation in OWN:
        return VIEWER
    if method == "get":
        return OWNER if operation in READS_OF_OWNERS else VIEWER
    return OWNER


def client_of(role: str, world: World) -> APIClient:
    client = APIClient()
    if role != OPEN:
        client.credentials(HTTP_AUTHORIZATION=f"Token {world.tokens[role]}")
    return client


def addressed(path: str, stocked: Stocked) -> str:
    noun = path.strip("/").split("/")[1]
    start, _, rest = path.partition("{")
    return path if not rest else f"{start}{stocked.ids[noun]}{rest.partition('}')[2]}"


@pytest.mark.parametrize(("operation", "method", "path"), operations(), ids=lambda value: str(value))
def test_each_role_may_do_what_the_table_says_and_no_more(operation: str, method: str, path: str, world: World) -> None:
    least = ROLES.index(least_role(operation, method))

    for role in ROLES:
        client = client_of(role, world)
        answer = getattr(client, method)(addressed(path, world.stocked), {} if method != "get" else None, format="json")
        may = ROLES.index(role) >= least
        refused = answer.status_code in (401, 403)
        assert refused is not may, f"{operation} as {role}: {answer.status_code} {getattr(answer, 'data', '')}"
        assert answer.status_code != 500
        if not may:
            assert answer.status_code == (401 if role == OPEN else 403)
            assert answer["Content-Type"] == "application/problem+json"


MONEY = {
    "value", "unit_cost", "cost", "landed_cost", "price", "cost_per_sqft", "waste_cost", "redo_cost", "by_kind",
    "credit", "booked_cost", "waste_by_kind", "charges",
}  # fmt: skip


def keys_of(body: Any) -> set[str]:
    if isinstance(body, dict):
        return set(body) | {key for value in body.values() for key in keys_of(value)}
    if isinstance(body, list):
        return {key for value in body for key in keys_of(value)}
    return set()


READS = [(operation, path) for operation, method, path in operations() if method == "get"]


@pytest.mark.parametrize(("operation", "path"), READS, ids=lambda value: str(value))
@pytest.mark.parametrize("role", [CREW, VIEWER])
def test_no_answer_shows_money_to_crew_or_viewer(operation: str, path: str, role: str, world: World) -> None:
    answer = client_of(role, world).get(addressed(path, world.stocked))

    if answer.status_code == 200 and "json" in answer["Content-Type"]:
        found = keys_of(answer.json()) & MONEY
        # Conditions and ticks of a pour have a "value" that is no money.
        assert found - ({"value"} if "pour" in operation else set()) == set()


@pytest.mark.parametrize(
    ("path", "money"),
    [
        ("/api/reports/cost-per-sqft/?group_by=job", "cost"),
        ("/api/reports/value/", "value"),
        ("/api/reports/expiring/?days=3660", "value"),
        ("/api/movements/", "value"),
        ("/api/reports/mass-balance/?material={materials}", "value"),
    ],
)
def test_exports_have_money_columns_for_the_owner_alone(path: str, money: str, world: World) -> None:
    def columns(role: str) -> str:
        where = path.format(**world.stocked.ids)
        answer = client_of(role, world).get(f"{where}{'&' if '?' in where else '?'}format=csv")
        if answer.status_code == 403:
            return ""
        assert answer.status_code == 200, answer.content
        return b"".join(answer.streaming_content).decode("utf-8-sig").splitlines()[0]

    assert money in columns(OWNER)
    assert money not in columns(CREW)


@pytest.mark.parametrize(
    "path",
    [
        "/api/packs/?ordering=price",
        "/api/reports/cost-per-sqft/?group_by=job&ordering=cost",
        "/api/reports/value/?ordering=value",
    ],
)
def test_only_the_owner_can_order_by_money(path: str, world: World) -> None:
    assert client_of(CREW, world).get(path).status_code in (400, 403)
    assert client_of(OWNER, world).get(path).status_code == 200
