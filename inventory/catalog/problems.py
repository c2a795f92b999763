"""What the catalogue's rules refuse."""

from inventory.rest.problems import Conflict, Unprocessable


class StockUnitFixed(Conflict):
    """A material that has moved keeps its stock unit."""

    slug = "stock-unit-fixed"
    title = "The stock unit cannot change any more"


class UnitMismatch(Unprocessable):
    """A quantity does not lead to the material's stock unit: `missing` names the figure that the material lacks."""

    slug = "unit-mismatch"
    title = "That unit does not lead to the stock unit"
