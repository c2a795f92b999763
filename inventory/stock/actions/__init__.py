"""Every write of the stock floor, one verb each."""

from inventory.stock.actions.receive import Arrival, Received, receive

__all__ = ["Arrival", "Received", "receive"]
