"""Every write to pours, one verb each."""

from inventory.pours.actions.amend import add_to_pour, correct_pour, explain_pour, reverse_pour
from inventory.pours.actions.complete import complete_pour, log_pour
from inventory.pours.actions.plan import PlanChange, cancel_pour, change_pour, plan_pour

__all__ = [
    "PlanChange",
    "add_to_pour",
    "cancel_pour",
    "change_pour",
    "complete_pour",
    "correct_pour",
    "explain_pour",
    "log_pour",
    "plan_pour",
    "reverse_pour",
]
