"""What the shelf holds: reads over lots, places and the ledger, in a constant number of SQL statements."""

from inventory.stock.queries.acts import blends, counts, returns_of
from inventory.stock.queries.figures import StockFigures, available, stock_figures
from inventory.stock.queries.lots import lots, whole_lots
from inventory.stock.queries.movements import movement_rows, movements, postings
from inventory.stock.queries.places import default_place, places

__all__ = [
    "StockFigures",
    "available",
    "blends",
    "counts",
    "default_place",
    "lots",
    "movement_rows",
    "movements",
    "places",
    "postings",
    "returns_of",
    "stock_figures",
    "whole_lots",
]
