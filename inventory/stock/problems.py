"""What can stand in the way of moving stock, in the trade's words."""

from inventory.rest.problems import BadBody, Conflict, Unprocessable


class NotEnoughStock(Unprocessable):
    slug = "not-enough-stock"
    title = "There is not enough on the shelf"


class LotOnHold(Unprocessable):
    slug = "lot-on-hold"
    title = "That lot is on hold"


class LotRejected(Unprocessable):
    slug = "lot-rejected"
    title = "That lot was rejected"


class LotExpired(Unprocessable):
    slug = "lot-expired"
    title = "That lot is past its use-by"


class UsedBeforeReceived(Unprocessable):
    slug = "used-before-received"
    title = "Nothing is used before it was received"


class TooMuch(BadBody):
    slug = "too-much"
    title = "That is more than one line of the ledger can hold"


class NotWhole(Conflict):
    slug = "not-whole-any-more"
    title = "Something has been taken from it since"


class AlreadyUndone(Conflict):
    slug = "already-undone"
    title = "That was undone before"


class TooFewContainers(Unprocessable):
    slug = "too-few-containers"
    title = "More containers have been opened than that"


class CreditTooLarge(Unprocessable):
    slug = "credit-too-large"
    title = "A credit cannot be more than the goods cost"


class DoesNotMix(Unprocessable):
    slug = "does-not-mix"
    title = "These do not go into one lot"


class NotUndoneHere(Conflict):
    slug = "not-undone-here"
    title = "This is undone where it was made"


class AlreadyCounted(Conflict):
    slug = "already-counted"
    title = "That was counted at this very moment"


class StillOnHold(Conflict):
    slug = "still-on-hold"
    title = "That lot number is on hold or rejected"


class AlreadyOpen(Conflict):
    slug = "already-open"
    title = "That lot is open already"


class NotOnHold(Conflict):
    slug = "not-on-hold"
    title = "That lot is usable"
