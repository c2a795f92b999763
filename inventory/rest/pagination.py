"""Pages of a list: `page` from 1, `page_size` up to 200."""

from typing import Any

from rest_framework.pagination import PageNumberPagination
from rest_framework.request import Request

from inventory.rest.filters import bad_parameters


class Pages(PageNumberPagination):
    """A page that does not exist is 404; a page size that cannot be is 400. Two SQL statements: count and rows."""

    page_size = 50
    max_page_size = 200
    page_size_query_param = "page_size"

    def get_page_size(self, request: Request) -> int:
        asked = request.query_params.get("page_size")
        if asked is None:
            return self.page_size
        if not asked.isascii() or not asked.isdigit() or len(asked) > 4 or not 1 <= int(asked) <= self.max_page_size:
            raise bad_parameters({"page_size": [f"Give a whole number from 1 to {self.max_page_size}."]})
        return int(asked)

    def get_schema_operation_parameters(self, view: Any) -> list[dict[str, Any]]:
        size = {"type": "integer", "minimum": 1, "maximum": self.max_page_size, "default": self.page_size}
        return [
            {
                "name": "page",
                "in": "query",
                "required": False,
                "description": "Which page, from 1. A page beyond the last is 404.",
                "schema": {"type": "integer", "minimum": 1},
            },
            {
                "name": "page_size",
                "in": "query",
                "required": False,
                "description": "Rows on a page.",
                "schema": size,
            },
        ]
