"""What can stand in the way of a delivery, in the trade's words."""

from inventory.rest.problems import Unprocessable


class LotTwice(Unprocessable):
    """One material with one lot number is one lot: its containers stand in one line."""

    slug = "lot-twice"
    title = "That lot is in the delivery twice"


class NothingToSpreadOver(Unprocessable):
    slug = "nothing-to-spread-over"
    title = "Nothing in the delivery has a price"
