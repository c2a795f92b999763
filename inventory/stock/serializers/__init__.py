"""The shape of lots, places, counts, mixes and the ledger in JSON."""

from inventory.stock.serializers.acts import (
    EmptyIn,
    GiveIn,
    HoldIn,
    MoveIn,
    NoteIn,
    OpenIn,
    ReleaseIn,
    ReturnIn,
    WhyIn,
    WriteOffIn,
)
from inventory.stock.serializers.blends import BlendIn, BlendOut
from inventory.stock.serializers.counts import CountIn, CountOut
from inventory.stock.serializers.lots import LotChange, LotOut, LotRow, NoteOut
from inventory.stock.serializers.movements import MovementOut, PostingOut
from inventory.stock.serializers.places import PlaceIn, PlaceOut
from inventory.stock.serializers.shelf import ShelfRow

__all__ = [
    "BlendIn",
    "BlendOut",
    "CountIn",
    "CountOut",
    "EmptyIn",
    "GiveIn",
    "HoldIn",
    "LotChange",
    "LotOut",
    "LotRow",
    "MoveIn",
    "MovementOut",
    "NoteIn",
    "NoteOut",
    "OpenIn",
    "PlaceIn",
    "PlaceOut",
    "PostingOut",
    "ReleaseIn",
    "ReturnIn",
    "ShelfRow",
    "WhyIn",
    "WriteOffIn",
]
