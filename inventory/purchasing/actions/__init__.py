"""Every write of the purchasing floor, one verb each."""

from inventory.purchasing.actions.charges import ChargeGiven, add_charge
from inventory.purchasing.actions.corrections import QuantityGiven, correct_quantities, reverse_delivery
from inventory.purchasing.actions.lines import ContentLabel, Line, MaterialLine, PackLine
from inventory.purchasing.actions.prices import PriceGiven, set_prices
from inventory.purchasing.actions.receive import receive_delivery

__all__ = [
    "ChargeGiven",
    "ContentLabel",
    "Line",
    "MaterialLine",
    "PackLine",
    "PriceGiven",
    "QuantityGiven",
    "add_charge",
    "correct_quantities",
    "receive_delivery",
    "reverse_delivery",
    "set_prices",
]
