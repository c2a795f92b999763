"""Every write to customers, jobs and pieces."""

from inventory.jobs.actions.customers import add_customer, delete_customer, edit_customer
from inventory.jobs.actions.jobs import delete_job, edit_job, finish_job, hand_over_job, make_job, reopen_job, shop_rule
from inventory.jobs.actions.pieces import add_pieces, delete_piece, edit_piece, scrap_piece, unscrap_piece
from inventory.jobs.actions.records import archive, unarchive

__all__ = [
    "add_customer",
    "add_pieces",
    "archive",
    "delete_customer",
    "delete_job",
    "delete_piece",
    "edit_customer",
    "edit_job",
    "edit_piece",
    "finish_job",
    "hand_over_job",
    "make_job",
    "reopen_job",
    "scrap_piece",
    "shop_rule",
    "unarchive",
    "unscrap_piece",
]
