"""The schema's hook: the problems that each operation can answer, and the headers that go with its kind."""

from typing import Any

from inventory.rest.errors import MEDIA_TYPE
from inventory.rest.exports import FORMAT, MEDIA_TYPES, Format
from inventory.rest.idempotency import HEADER, LONGEST_KEY, REPLAYED

FACTS = "x-facts"  # what the hook must know of an operation, put there by TradeSchema and taken out here

PROBLEM: dict[str, Any] = {
    "type": "object",
    "description": "What went wrong and how to mend it (RFC 9457). A kind of problem may have further members.",
    "properties": {
        "type": {
            "type": "string",
            "format": "uri-reference",
            "description": "The kind of problem; clients switch on it.",
            "examples": ["/problems/not-enough-stock"],
        },
        "title": {"type": "string"},
        "status": {"type": "integer"},
        "detail": {"type": "string", "description": "What is wrong, by how much, and how to mend it."},
        "errors": {
            "type": "array",
            "description": "The members of the body, or parameters of the query, that need mending.",
            "items": {
                "type": "object",
                "properties": {
                    "pointer": {"type": "string", "description": "JSON pointer into the body; empty for all of it."},
                    "parameter": {"type": "string", "description": "Name of the query parameter."},
                    "detail": {"type": "string"},
                    "choices": {"type": "array", "items": {"type": "string"}},
                },
                "required": ["detail"],
            },
        },
        "remedies": {
            "type": "array",
            "description": "What would help.",
            "items": {
                "type": "object",
                "properties": {"kind": {"type": "string"}, "text": {"type": "string"}},
                "required": ["kind", "text"],
            },
        },
    },
    "required": ["type", "title", "status", "detail"],
}

PROBLEM_CONTENT = {MEDIA_TYPE: {"schema": {"$ref": "#/components/schemas/Problem"}}}
DESCRIPTIONS = {
    "400": "The body, the query or a header needs mending.",
    "401": "Not signed in, or no longer.",
    "403": "The role does not allow it, or the CSRF token is missing.",
    "404": "There is nothing at this address.",
    "405": "The address does not take this method.",
    "409": "The thing is not in a state for it, is in use, or somebody else is at it (type busy: try again).",
    "412": "Somebody changed it since it was read.",
    "413": "The body is too large.",
    "415": "The body is not JSON.",
    "422": "The body is well-formed, and the shop's rules do not allow it.",
}
WRITES = ("post", "put", "patch", "delete")


def add_problem_answers(result: dict[str, Any], **_kwargs: Any) -> dict[str, Any]:
    """Post-processing hook of drf-spectacular: completes every operation under /api/."""
    result.setdefault("components", {}).setdefault("schemas", {})["Problem"] = PROBLEM
    for path, operations in result["paths"].items():
        for method, operation in operations.items():
            facts = operation.pop(FACTS, None)
            if facts is not None:
                complete(path, method, operation, facts)
    result["components"]["schemas"] = dict(sorted(result["components"]["schemas"].items()))
    return result


def complete(path: str, method: str, operation: dict[str, Any], facts: dict[str, Any]) -> None:
    if facts["is_idempotent"]:
        add_parameter(operation, IDEMPOTENCY_KEY)
    if facts["is_conditional"]:
        add_parameter(operation, IF_MATCH)
    if len(facts["forms"]) > 1:
        add_forms(operation, facts["forms"])
    for status, answer in operation["responses"].items():
        if status.startswith("2"):
            add_headers(answer, facts)
        elif MEDIA_TYPE in answer.get("content", {}):
            answer["content"] = PROBLEM_CONTENT
    for status in statuses(path, method, facts):
        operation["responses"].setdefault(status, problem(status))
    operation["responses"] = dict(sorted(operation["responses"].items()))


def statuses(path: str, method: str, facts: dict[str, Any]) -> list[str]:
    """The statuses of the problems that an operation can answer."""
    if not facts["is_ours"]:
        return []
    found = ["400", "401"]  # a bad token is refused even where none is needed
    if not facts["is_open_to_all"] or method in WRITES:
        found.append("403")
    if "{" in path or facts["is_list"]:
        found.append("404")
    if method in WRITES:
        found += ["409", "422"]
    if method in WRITES and method != "delete":
        found += ["413", "415"]
    if facts["is_conditional"]:
        found.append("412")
    if Format.XLSX.value in facts["forms"]:
        found.append("422")
    return found


def problem(status: str) -> dict[str, Any]:
    answer: dict[str, Any] = {
        "description": DESCRIPTIONS[status],
        "content": PROBLEM_CONTENT,
    }
    if status == "401":
        answer["headers"] = {"WWW-Authenticate": text_header("How to sign in.")}
    if status == "409":
        answer["headers"] = {"Retry-After": text_header("With the type busy: seconds to wait.")}
    return answer


def add_headers(answer: dict[str, Any], facts: dict[str, Any]) -> None:
    headers = {}
    if facts["has_etag"]:
        headers["ETag"] = text_header("The version; send it back in If-Match.")
    if facts["is_idempotent"]:
        headers[REPLAYED] = text_header("true where the answer is that of an earlier call with the same key.")
    if headers:
        answer["headers"] = {**answer.get("headers", {}), **headers}


def text_header(description: str) -> dict[str, Any]:
    return {"description": description, "schema": {"type": "string"}}


def add_parameter(operation: dict[str, Any], parameter: dict[str, Any]) -> None:
    operation.setdefault("parameters", []).append(parameter)


def add_forms(operation: dict[str, Any], forms: list[str]) -> None:
    """The `format` parameter of a report, and the media types of its files."""
    schema = {"type": "string", "enum": forms, "default": Format.JSON.value}
    add_parameter(
        operation,
        {"name": FORMAT, "in": "query", "required": False, "description": "JSON or a file.", "schema": schema},
    )
    content = operation["responses"]["200"]["content"]
    content[MEDIA_TYPES[Format.CSV]] = {"schema": {"type": "string"}}
    content[MEDIA_TYPES[Format.XLSX]] = {"schema": {"type": "string", "format": "binary"}}


IDEMPOTENCY_KEY: dict[str, Any] = {
    "name": HEADER,
    "in": "header",
    "required": False,
    "description": "A new key for each call, such as a random UUID; the same call sent again is not repeated.",
    "schema": {"type": "string", "minLength": 1, "maxLength": LONGEST_KEY, "pattern": "^[ -~]+$"},
}
IF_MATCH: dict[str, Any] = {
    "name": "If-Match",
    "in": "header",
    "required": False,
    "description": "The ETag as it was read: the change is made only if nobody was quicker.",
    "schema": {"type": "string", "examples": ['"3"']},
}
