"""The tables that the benchmark's history is written into."""

from inventory.catalog.models import Material, Supplier
from inventory.jobs.models import Customer, Job, Piece
from inventory.pours.models import Pour, PourPiece, Usage
from inventory.purchasing.models import Charge, ChargeShare, Delivery, DeliveryLine
from inventory.stock.models import Balance, Blend, Lot, Movement, Place, Posting
from tests.benchmarks.loading import Sheet


class Sheets:
    """One sheet for each table, columns in the order in which `world` gives them."""

    def __init__(self) -> None:
        self.place = Sheet(Place, "id", "number", "name")
        self.supplier = Sheet(Supplier, "id", "number", "name", "lead_time_days")
        self.material = Sheet(
            Material, "id", "number", "code", "name", "kind", "stock_unit", "density_g_per_ml", "main_supplier_id",
            "is_in_use", "single_lot_per_job",
        )  # fmt: skip
        self.lot = Sheet(
            Lot, "id", "uuid", "number", "material_id", "lot_number", "origin", "opened_from_id", "received_on",
            "received_at", "expires_on", "opened_on", "use_by",
        )  # fmt: skip
        self.posting = Sheet(Posting, "id", "uuid", "kind", "by_id", "recorded_at", "charged_on")
        self.movement = Sheet(
            Movement, "id", "posting_id", "kind", "lot_id", "material_id", "place_id", "quantity", "value",
            "happened_at", "happened_on", "corrects_id", "into_lot_id", "cause",
        )  # fmt: skip
        self.balance = Sheet(Balance, "lot_id", "place_id", "quantity", "value")
        self.blend = Sheet(Blend, "id", "number", "lot_id", "made_at", "posting_id", "by_id")
        self.delivery = Sheet(
            Delivery, "id", "number", "supplier_id", "received_on", "place_id", "by_id", "recorded_at", "posting_id"
        )
        self.delivery_line = Sheet(
            DeliveryLine, "id", "delivery_id", "position", "material_id", "lot_id", "quantity", "typed_amount",
            "typed_unit", "cost", "booked_cost",
        )  # fmt: skip
        self.charge = Sheet(Charge, "id", "delivery_id", "kind", "amount", "spread_by", "charged_on", "posting_id")
        self.charge_share = Sheet(ChargeShare, "id", "charge_id", "line_id", "amount")
        self.customer = Sheet(Customer, "id", "number", "name")
        self.job = Sheet(Job, "id", "number", "customer_id", "title", "purpose", "finished_on")
        self.piece = Sheet(Piece, "id", "uuid", "number", "job_id", "name", "top_sqft", "area_sqft")
        self.pour = Sheet(
            Pour, "id", "uuid", "number", "layer", "place_id", "status", "planned_for", "poured_at", "by_id", "made_at"
        )
        self.pour_piece = Sheet(PourPiece, "id", "pour_id", "piece_id")
        self.usage = Sheet(
            Usage, "id", "pour_id", "position", "material_id", "lot_id", "place_id", "movement_id", "quantity",
            "typed_amount", "typed_unit", "density_g_per_ml", "is_waste", "provenance", "lot_provenance", "lot_status",
        )  # fmt: skip

    def all(self) -> list[Sheet]:
        return [sheet for sheet in vars(self).values() if isinstance(sheet, Sheet)]

    def flush(self) -> None:
        for sheet in self.all():
            sheet.flush()
