"""What can be wrong with a pour."""

from inventory.pours.models import Pour, PourStatus
from inventory.rest.problems import Conflict, Unprocessable


class PourNotPlanned(Conflict):
    slug = "pour-not-planned"
    title = "The pour is not planned any more"


class PourNotCompleted(Conflict):
    slug = "pour-not-completed"
    title = "The pour is not completed"


class TookLeftover(Conflict):
    """What another pour had left over went into it, so that pour is mended first."""

    slug = "took-left-over"
    title = "Another pour's left-over went into it"


class NothingToExplain(Conflict):
    slug = "nothing-to-explain"
    title = "Nothing here waits for the owner's word"


class LeftoverTooLarge(Unprocessable):
    slug = "left-over-too-large"
    title = "More cannot be left than was mixed"


class WrongLot(Unprocessable):
    slug = "wrong-lot"
    title = "That lot is not of this material"


def not_planned(pour: Pour) -> PourNotPlanned:
    """Says what the pour is instead, and what can be done with it."""
    remedies = {
        PourStatus.COMPLETED: {
            "kind": "correct",
            "text": "Correct what went in, with a reason; or undo the pour and plan it again.",
            "call": f"/api/pours/{pour.pk}/correct/",
        }
    }
    fresh = {"kind": "plan_again", "text": "Put it down as a new pour.", "call": "/api/pours/"}
    return PourNotPlanned(
        f"Pour {pour.number} is {pour.get_status_display().lower()}.",
        remedies=[remedies.get(PourStatus(pour.status), fresh)],
    )


def not_completed(pour: Pour) -> PourNotCompleted:
    """Says what the pour is instead."""
    complete = {"kind": "complete", "text": "Complete it first.", "call": f"/api/pours/{pour.pk}/complete/"}
    return PourNotCompleted(
        f"Pour {pour.number} is {pour.get_status_display().lower()}.",
        remedies=[complete] if pour.status == PourStatus.PLANNED else [],
    )
