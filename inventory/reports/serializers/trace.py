"""Uses and sources in JSON. Uses may be many: they are laid out by hand, and declared for the schema."""

from typing import Any

from rest_framework import serializers

from inventory.jobs.models import Purpose
from inventory.pours.models import Layer
from inventory.reports.queries.uses import JobUse, LotName, PourUse, RestOf, TopUse, Uses
from inventory.reports.serializers.fields import ReportedLot
from inventory.rest.quantities import QuantityField, quantity_json
from inventory.stock.models import Origin


class UsesQuery(serializers.Serializer[Any]):
    all_of_this_number = serializers.BooleanField(
        default=False, help_text="All lots of the material that bear the same supplier lot number."
    )


class TopUseOut(serializers.Serializer[Any]):
    """is_board: a sample board."""

    piece = serializers.IntegerField()
    number = serializers.IntegerField()
    name = serializers.CharField()
    job = serializers.IntegerField()
    quantity = QuantityField()
    is_board = serializers.BooleanField()
    is_scrapped = serializers.BooleanField()


class PourUseOut(serializers.Serializer[Any]):
    """quantity: of the traced lot in the pour, through whatever it was mixed into. wasted: of that, thrown away."""

    pour = serializers.IntegerField()
    number = serializers.IntegerField()
    layer = serializers.ChoiceField(Layer.choices)
    is_redo = serializers.BooleanField()
    poured_at = serializers.DateTimeField()
    quantity = QuantityField()
    wasted = QuantityField()
    tops = TopUseOut(many=True)


class JobUseOut(serializers.Serializer[Any]):
    job = serializers.IntegerField()
    number = serializers.IntegerField()
    title = serializers.CharField()
    customer = serializers.IntegerField()
    customer_name = serializers.CharField()
    purpose = serializers.ChoiceField(Purpose.choices)
    quantity = QuantityField()
    tops = serializers.IntegerField()


class RestOut(serializers.Serializer[Any]):
    """what: on_hand, written_off, returned, given, counted (off). lot: where it lies, or what it left."""

    what = serializers.CharField()
    lot = ReportedLot()
    place = serializers.CharField(allow_null=True)
    quantity = QuantityField()


class ThroughOut(serializers.Serializer[Any]):
    lot = ReportedLot()
    quantity = QuantityField()


class UsesOut(serializers.Serializer[Any]):
    """Where lots went, net of what was undone. total: all that ever came in; the pours and the rest sum to it."""

    lots = ReportedLot(many=True)
    received = QuantityField()
    found = QuantityField()
    opened = QuantityField()
    blended = QuantityField()
    total = QuantityField()
    difference = QuantityField()
    pours = PourUseOut(many=True)
    jobs = JobUseOut(many=True)
    rest = RestOut(many=True)
    through = ThroughOut(many=True)

    def to_representation(self, instance: Uses) -> dict[str, Any]:
        unit = instance.unit
        came = ("received", "found", "opened", "blended", "total", "difference")
        return {
            "lots": [lot_json(lot) for lot in instance.lots],
            **{name: quantity_json(getattr(instance, name), unit) for name in came},
            "pours": [pour_json(pour, unit) for pour in instance.pours],
            "jobs": [job_json(job, unit) for job in instance.jobs],
            "rest": [rest_json(row, unit) for row in instance.rest],
            "through": [
                {"lot": lot_json(row.lot), "quantity": quantity_json(row.quantity, unit)} for row in instance.through
            ],
        }


def pour_json(use: PourUse, unit: str) -> dict[str, Any]:
    return {
        "pour": use.of.pour,
        "number": use.of.pour_number,
        "layer": use.of.layer,
        "is_redo": bool(use.of.is_redo),
        "poured_at": use.poured_at.isoformat().replace("+00:00", "Z"),
        "quantity": quantity_json(use.quantity, unit),
        "wasted": quantity_json(use.wasted, unit),
        "tops": [top_json(top, unit) for top in use.tops],
    }


def top_json(use: TopUse, unit: str) -> dict[str, Any]:
    return {
        "piece": use.on.piece,
        "number": use.on.number,
        "name": use.on.name,
        "job": use.on.job,
        "quantity": quantity_json(use.quantity, unit),
        "is_board": use.on.is_board,
        "is_scrapped": bool(use.on.is_scrapped),
    }


def job_json(use: JobUse, unit: str) -> dict[str, Any]:
    return {
        "job": use.of.job,
        "number": use.of.job_number,
        "title": use.of.title,
        "customer": use.of.customer,
        "customer_name": use.of.customer_name,
        "purpose": use.of.purpose,
        "quantity": quantity_json(use.quantity, unit),
        "tops": use.tops,
    }


def rest_json(row: RestOf, unit: str) -> dict[str, Any]:
    return {
        "what": row.what,
        "lot": lot_json(row.lot),
        "place": row.place,
        "quantity": quantity_json(row.quantity, unit),
    }


def lot_json(lot: LotName) -> dict[str, Any]:
    return {
        "id": lot.id,
        "number": lot.number,
        "lot_number": lot.lot_number,
        "status": lot.status,
        "received_on": lot.received_on.isoformat(),
        "material": {"id": lot.material, "name": lot.material_name},
    }


class SourceLotOut(ReportedLot):
    """supplier: null of a mix, and of a lot that was not delivered."""

    origin = serializers.ChoiceField(Origin.choices)
    use_by = serializers.DateField(allow_null=True)
    material_kind = serializers.CharField()
    supplier = serializers.CharField(allow_null=True)


class PourPartOut(serializers.Serializer[Any]):
    pour = serializers.IntegerField()
    number = serializers.IntegerField()
    layer = serializers.ChoiceField(Layer.choices)
    poured_at = serializers.DateTimeField()
    quantity = QuantityField(unit="unit")


class SourceOut(serializers.Serializer[Any]):
    """A lot and how much of it is in there, waste included. is_direct: poured from it; else it only went into a lot
    that was."""

    lot = SourceLotOut()
    quantity = QuantityField(unit="unit")
    is_direct = serializers.BooleanField()
    pours = PourPartOut(many=True)


class SourcesOut(serializers.Serializer[Any]):
    rows = SourceOut(many=True)
