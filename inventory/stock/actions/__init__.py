"""Every write of the stock floor, one verb each."""

from inventory.stock.actions.bars import hold, reject, release
from inventory.stock.actions.blends import Input, blend, undo_blend
from inventory.stock.actions.counts import Counted, count_place, undo_count
from inventory.stock.actions.issues import empty, give_away, return_goods, write_off
from inventory.stock.actions.lots import LotFields, edit_lot, note
from inventory.stock.actions.moves import move
from inventory.stock.actions.openings import open_container, undo_opening
from inventory.stock.actions.places import add_place, change_place, delete_place
from inventory.stock.actions.receive import Arrival, Received, receive
from inventory.stock.actions.reverse import reverse_posting

__all__ = [
    "Arrival",
    "Counted",
    "Input",
    "LotFields",
    "Received",
    "add_place",
    "blend",
    "change_place",
    "count_place",
    "delete_place",
    "edit_lot",
    "empty",
    "give_away",
    "hold",
    "move",
    "note",
    "open_container",
    "receive",
    "reject",
    "release",
    "return_goods",
    "reverse_posting",
    "undo_blend",
    "undo_count",
    "undo_opening",
    "write_off",
]
