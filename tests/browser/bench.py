"""What several tests pour: a kit of two parts and a top, made for one test alone through the shop's real acts."""

from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any

from tests.browser.office import Office


@dataclass(frozen=True)
class Bench:
    """A kit of 1 gal of A and 64 fl oz of B from a supplier of its own, and a job with one top of 20 sq ft."""

    office: Office
    word: str
    resin: Any
    hardener: Any
    supplier: Any
    kit: Any
    job: Any

    @property
    def today(self) -> str:
        return str(self.office.get("/api/today/")["on"])

    def receive_kit(self, *, price: str = "100") -> Any:
        """One kit, booked as it came, the lots named after the bench."""
        contents = [
            {"material": self.resin["id"], "lot_number": f"{self.word}-A"},
            {"material": self.hardener["id"], "lot_number": f"{self.word}-B"},
        ]
        line = {"pack": self.kit["id"], "count": 1, "cost": price, "contents": contents}
        body = {"supplier": self.supplier["id"], "received_on": self.today, "lines": [line]}
        return self.office.post("/api/deliveries/", body)

    def plan(self, resin: str, hardener: str) -> Any:
        """A flood coat planned for now, whether the stock is there or not."""
        return self.office.post(
            "/api/pours/",
            {
                "pieces": [self.job["pieces"][0]["id"]],
                "layer": "flood_coat",
                "poured_at": datetime.now(UTC).isoformat(),
                "allow_short": True,
                "usages": [
                    {"material": self.resin["id"], "quantity": resin},
                    {"material": self.hardener["id"], "quantity": hardener},
                ],
            },
        )


def bench(office: Office, word: str) -> Bench:
    """Everything that a pour needs but stock. word: names it all, and is used once in a shop."""
    liquid = {"stock_unit": "ml", "tracks_lots": True}
    resin = office.post(
        "/api/materials/",
        {"code": f"{word}-A", "name": f"{word} resin", "kind": "resin", "density_g_per_ml": "1.13", **liquid},
    )
    hardener = office.post(
        "/api/materials/",
        {"code": f"{word}-B", "name": f"{word} hardener", "kind": "hardener", "density_g_per_ml": "0.96", **liquid},
    )
    supplier = office.post("/api/suppliers/", {"name": f"{word} Supply", "lead_time_days": 5})
    kit = office.post(
        "/api/packs/",
        {
            "supplier": supplier["id"],
            "name": f"{word} kit",
            "contents": [
                {"material": resin["id"], "quantity": "1 gal", "cost_share_percent": "60"},
                {"material": hardener["id"], "quantity": "64 fl oz", "cost_share_percent": "40"},
            ],
        },
    )
    job = office.post(
        "/api/jobs/",
        {
            "customer": {"name": f"{word} household"},
            "title": f"{word} kitchen",
            "pieces": [{"name": f"{word} top", "area_sqft": "20"}],
        },
    )
    return Bench(office, word, resin, hardener, supplier, kit, job)
