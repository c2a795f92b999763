"""What a role may do. A view says the least role it needs; what it does not say is refused to all but the owner."""

from typing import Any

from rest_framework.permissions import SAFE_METHODS, BasePermission
from rest_framework.request import Request

from inventory.rest.problems import Role


class HasRole(BasePermission):
    """Lets a signed-in person through whose role covers what the view needs for this method."""

    def has_permission(self, request: Request, view: Any) -> bool:
        if getattr(view, "is_open_to_all", False):
            return True
        if not request.user or not request.user.is_authenticated:
            return False
        needed = needed_role(view, request.method or "GET")
        self.message = f"This needs the role {needed.value}; yours is {role_of(request.user) or 'none'}."
        role = role_of(request.user)
        return role is not None and role.covers(needed)


def needed_role(view: Any, method: str) -> Role:
    """The least role for a method of a view.

    `view.permissions[method]` where it is given. Otherwise a write needs `view.permission`, the owner unless said; a
    read needs a viewer, or `view.permission` where the view does nothing but read.
    """
    method = "GET" if method == "HEAD" else method
    by_method = getattr(view, "permissions", {})
    if method in by_method:
        return Role(by_method[method])
    permission = getattr(view, "permission", None)
    if method in SAFE_METHODS:
        return Role.VIEWER if permission is None or writes(view) else Role(permission)
    return Role.OWNER if permission is None else Role(permission)


def writes(view: Any) -> bool:
    return any(hasattr(view, method) for method in ("post", "put", "patch", "delete"))


def role_of(person: Any) -> Role | None:
    """The person's role, None for somebody who has none or is not signed in."""
    try:
        return Role(person.role)
    except (AttributeError, ValueError):
        return None
