"""A script of the office at the API: prepares what a test starts from, through the shop's real acts."""

import json
import urllib.request
import uuid
from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True)
class Office:
    """Signed in by token. Every act carries a key of its own."""

    address: str
    token: str

    def get(self, path: str) -> Any:
        return self.ask("GET", path)

    def post(self, path: str, body: dict[str, Any]) -> Any:
        return self.ask("POST", path, body)

    def patch(self, path: str, body: dict[str, Any]) -> Any:
        return self.ask("PATCH", path, body)

    def ask(self, method: str, path: str, body: dict[str, Any] | None = None) -> Any:
        headers = {
            "Authorization": f"Token {self.token}",
            "Content-Type": "application/json",
            "Idempotency-Key": str(uuid.uuid4()),
        }
        sent = None if body is None else json.dumps(body).encode()
        request = urllib.request.Request(f"{self.address}{path}", data=sent, headers=headers, method=method)
        with urllib.request.urlopen(request, timeout=20) as answer:
            return json.load(answer)
