"""The shapes of materials, suppliers, packs, resin systems and units."""

from inventory.catalog.serializers.materials import MaterialIn, MaterialOut
from inventory.catalog.serializers.packs import PackIn, PackOut
from inventory.catalog.serializers.resin_systems import ResinSystemIn, ResinSystemOut
from inventory.catalog.serializers.suppliers import SupplierIn, SupplierOut
from inventory.catalog.serializers.units import UnitOut

__all__ = [
    "MaterialIn",
    "MaterialOut",
    "PackIn",
    "PackOut",
    "ResinSystemIn",
    "ResinSystemOut",
    "SupplierIn",
    "SupplierOut",
    "UnitOut",
]
