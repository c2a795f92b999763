"""Who is calling: a token for scripts, a session for the browser. Each costs one or two SQL statements."""

import re
from typing import Any

from django.conf import settings
from rest_framework.authentication import SessionAuthentication, TokenAuthentication
from rest_framework.exceptions import AuthenticationFailed
from rest_framework.request import Request

TOKEN = re.compile(r"[0-9a-f]{40}")
SESSION_KEY = re.compile(r"[0-9a-z]{8,64}")


class Token(TokenAuthentication):
    """`Authorization: Token KEY`. A person who may no longer sign in is refused with 401."""

    keyword = "Token"

    def authenticate_credentials(self, key: str) -> tuple[Any, Any]:
        if not TOKEN.fullmatch(key):
            raise AuthenticationFailed("This token is not one that this shop issued.")
        try:
            return super().authenticate_credentials(key)
        except AuthenticationFailed as refusal:
            raise AuthenticationFailed("This token is unknown, or its person may no longer sign in.") from refusal


class Session(SessionAuthentication):
    """The browser's session cookie; a write needs the CSRF token beside it (403 without)."""

    def authenticate(self, request: Request) -> tuple[Any, None] | None:
        key = request.COOKIES.get(settings.SESSION_COOKIE_NAME)
        if key is None or not SESSION_KEY.fullmatch(key):
            return None
        return super().authenticate(request)
