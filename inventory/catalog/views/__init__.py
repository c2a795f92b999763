from inventory.catalog.views.materials import ArchiveMaterial, Materials, OneMaterial, UnarchiveMaterial
from inventory.catalog.views.packs import ArchivePack, OnePack, Packs, UnarchivePack
from inventory.catalog.views.resin_systems import (
    ArchiveResinSystem,
    OneResinSystem,
    ResinSystems,
    UnarchiveResinSystem,
)
from inventory.catalog.views.suppliers import ArchiveSupplier, OneSupplier, Suppliers, UnarchiveSupplier
from inventory.catalog.views.units import Units

__all__ = [
    "ArchiveMaterial",
    "ArchivePack",
    "ArchiveResinSystem",
    "ArchiveSupplier",
    "Materials",
    "OneMaterial",
    "OnePack",
    "OneResinSystem",
    "OneSupplier",
    "Packs",
    "ResinSystems",
    "Suppliers",
    "UnarchiveMaterial",
    "UnarchivePack",
    "UnarchiveResinSystem",
    "UnarchiveSupplier",
    "Units",
]
