"""Every write to materials, suppliers, packs and resin systems."""

from inventory.catalog.actions.materials import MeasureGiven, add_material, change_material
from inventory.catalog.actions.packs import ContentGiven, add_pack, change_pack
from inventory.catalog.actions.resin_systems import PartGiven, add_resin_system, change_resin_system
from inventory.catalog.actions.shelving import archive, delete_unused, unarchive
from inventory.catalog.actions.suppliers import add_supplier, change_supplier

__all__ = [
    "ContentGiven",
    "MeasureGiven",
    "PartGiven",
    "add_material",
    "add_pack",
    "add_resin_system",
    "add_supplier",
    "archive",
    "change_material",
    "change_pack",
    "change_resin_system",
    "change_supplier",
    "delete_unused",
    "unarchive",
]
