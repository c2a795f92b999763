"""What delivered goods cost, against printed examples, through the API."""

from collections.abc import Callable
from decimal import Decimal
from typing import Any

import pytest
from rest_framework.test import APIClient

from inventory.shop.models import Person


class Office:
    def __init__(self, client: APIClient) -> None:
        self.client = client
        self.supplier = self.post("suppliers", {"name": "Harbour Resin Supply", "lead_time_days": 5})["id"]

    def post(self, path: str, body: dict[str, Any]) -> dict[str, Any]:
        answer = self.client.post(f"/api/{path}/", body, format="json")
        assert answer.status_code == 201, answer.content
        found: dict[str, Any] = answer.json()
        return found

    def material(self, code: str, name: str) -> int:
        body = {"code": code, "name": name, "kind": "consumable", "stock_unit": "each"}
        return int(self.post("materials", body)["id"])

    def deliver(self, *lines: dict[str, Any], **fields: Any) -> dict[str, Any]:
        return self.post(
            "deliveries", {"supplier": self.supplier, "received_on": "2026-02-02", "lines": list(lines)} | fields
        )


@pytest.fixture
def office(api: Callable[[Person], APIClient], owner: Person) -> Office:
    return Office(api(owner))


def landed(delivery: dict[str, Any]) -> list[Decimal]:
    return [Decimal(line["landed_cost"]) for line in delivery["lines"]]


FREIGHT = {"kind": "freight", "amount": "1000"}


def test_freight_with_the_goods_is_part_of_their_cost(office: Office) -> None:
    """OpenStax, Principles of Accounting vol. 1, 6.5: 30 at 80 and freight of 1,000 cost 3,400."""
    line = {"material": office.material("SET", "Set"), "quantity": "30 each", "cost": str(30 * 80)}

    delivery = office.deliver(line, charges=[FREIGHT | {"spread_by": "quantity"}])

    assert landed(delivery) == [3_400]


def test_freight_that_is_billed_later_makes_them_cost_the_same(office: Office) -> None:
    """The same goods, the freight billed a month later."""
    line = {"material": office.material("SET", "Set"), "quantity": "30 each", "cost": str(30 * 80)}
    delivery = office.deliver(line)
    assert landed(delivery) == [2_400]

    charge = FREIGHT | {"spread_by": "value", "charged_on": "2026-03-02"}
    charged = office.post(f"deliveries/{delivery['id']}/charges", charge)

    assert landed(charged) == [3_400]
    lot = office.client.get(f"/api/lots/?material={line['material']}").json()["results"][0]
    assert Decimal(lot["value"]) == 3_400


def test_cost_of_purchase_is_price_and_duty_and_transport_less_discount(office: Office) -> None:
    """IAS 2.11: price + duties + transport and handling - discounts."""
    line = {"material": office.material("SET", "Set"), "quantity": "10 each", "cost": "500"}
    charges = [
        {"kind": "import duty", "amount": "40"},
        {"kind": "transport", "amount": "25.50"},
        {"kind": "handling", "amount": "4.50"},
        {"kind": "discount", "amount": "-50"},
    ]

    assert landed(office.deliver(line, charges=charges)) == [520]


def test_one_price_for_several_things_is_divided_by_their_appraisals(office: Office) -> None:
    """Wild, Principles of Financial Accounting, ch. 10: 326,000 over appraisals of 175,000, 70,000 and 105,000."""
    appraised = {"Land": 175_000, "Improvements": 70_000, "Building": 105_000}
    whole = sum(appraised.values())
    contents = [
        {
            "material": office.material(name.upper(), name),
            "quantity": "1 each",
            "cost_share_percent": str(Decimal(100) * value / whole),
        }
        for name, value in appraised.items()
    ]
    pack = office.post("packs", {"supplier": office.supplier, "name": "All of it", "contents": contents})

    delivery = office.deliver({"pack": pack["id"], "count": 1, "cost": "326000"})

    assert landed(delivery) == [163_000, 65_200, 97_800]
