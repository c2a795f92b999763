"""Answers are JSON whatever the Accept header says (RFC 9110, 12.5.1 allows it), so that a download link works."""

from collections.abc import Iterable

from rest_framework.negotiation import DefaultContentNegotiation
from rest_framework.renderers import BaseRenderer
from rest_framework.request import Request


class AlwaysJSON(DefaultContentNegotiation):
    """Takes the first renderer without asking."""

    def select_renderer(
        self, request: Request, renderers: Iterable[BaseRenderer], format_suffix: str | None = None
    ) -> tuple[BaseRenderer, str]:
        first = next(iter(renderers))
        return first, first.media_type or "application/json"
