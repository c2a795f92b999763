"""Every write to the shop's settings, people and tokens."""

from inventory.shop.actions.people import (
    add_person,
    change_own_password,
    change_person,
    lock_owners,
    set_password,
)
from inventory.shop.actions.settings import change_settings, lock_shop, set_up_shop
from inventory.shop.actions.tokens import issue_token, withdraw_token

__all__ = [
    "add_person",
    "change_own_password",
    "change_person",
    "change_settings",
    "issue_token",
    "lock_owners",
    "lock_shop",
    "set_password",
    "set_up_shop",
    "withdraw_token",
]
