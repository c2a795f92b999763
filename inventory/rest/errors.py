"""One error body for everything: RFC 9457 problem details, built here and nowhere else.

The members are `type` (a URI reference that ends in a slug), `title`, `status`, `detail`, and where they apply `errors`
(rows of {"pointer", "detail"}, or {"parameter", "detail"} for the query), `remedies` and what the problem adds itself.
"""

from collections.abc import Mapping
from typing import Any

from django.core.exceptions import BadRequest, PermissionDenied, RequestDataTooBig, SuspiciousOperation
from django.core.exceptions import ValidationError as DjangoValidationError
from django.db import Error as DatabaseError
from django.db.models import ProtectedError, RestrictedError
from django.http import Http404, HttpResponse, JsonResponse, UnreadablePostError
from django.http.multipartparser import MultiPartParserError
from rest_framework import exceptions
from rest_framework.fields import get_error_detail
from rest_framework.response import Response

from inventory.calc.quantities import AmbiguousUnit, QuantityError, UnitMismatch
from inventory.rest.database_errors import problem_of_database
from inventory.rest.pointers import pointed_errors
from inventory.rest.problems import BadBody, Busy, InUse, Problem, TooLarge

MEDIA_TYPE = "application/problem+json"
UNREADABLE = (BadRequest, SuspiciousOperation, MultiPartParserError, UnreadablePostError)


class NotFound(Problem):
    slug, title, status = "not-found", "There is nothing at this address", 404


class NotSignedIn(Problem):
    slug, title, status = "not-signed-in", "You are not signed in", 401


class RoleTooLow(Problem):
    slug, title, status = "not-for-your-role", "Your role does not allow this", 403


class NoCSRFToken(Problem):
    slug, title, status = "csrf", "The page's security token is missing or old", 403


class MethodNotAllowed(Problem):
    slug, title, status = "method-not-allowed", "This address does not take that method", 405


class WrongMediaType(Problem):
    slug, title, status = "unsupported-media-type", "The body must be JSON", 415


class NotAcceptable(Problem):
    slug, title, status = "not-acceptable", "The answer is not made in that form", 406


class TooManyRequests(Problem):
    slug, title, status = "too-many-requests", "Too many calls", 429


class UnitsDiffer(Problem):
    slug, title, status = "unit-mismatch", "One unit does not lead to the other", 422


class ServerError(Problem):
    slug, title, status = "server-error", "Something went wrong here", 500


REST_FRAMEWORK_KINDS: dict[type[exceptions.APIException], type[Problem]] = {
    exceptions.NotFound: NotFound,
    exceptions.NotAuthenticated: NotSignedIn,
    exceptions.AuthenticationFailed: NotSignedIn,
    exceptions.PermissionDenied: RoleTooLow,
    exceptions.MethodNotAllowed: MethodNotAllowed,
    exceptions.UnsupportedMediaType: WrongMediaType,
    exceptions.NotAcceptable: NotAcceptable,
    exceptions.Throttled: TooManyRequests,
}


def answer_problem(exception: Exception, _context: Mapping[str, Any]) -> Response | None:
    """The answer to an exception that a view raised; None for what is a fault of ours (a 500)."""
    problem = problem_of(exception)
    if problem is None:
        return None
    return Response(
        body_of(problem), status=problem.status, headers=headers_of(exception, problem), content_type=MEDIA_TYPE
    )


def plain_answer(problem: Problem) -> HttpResponse:
    """The same body for the places that Django answers without a view of ours."""
    return JsonResponse(body_of(problem), status=problem.status, content_type=MEDIA_TYPE)


def body_of(problem: Problem) -> dict[str, Any]:
    body = {
        "type": f"/problems/{problem.slug}",
        "title": problem.title,
        "status": problem.status,
        "detail": problem.detail,
    }
    if problem.errors:
        body["errors"] = problem.errors
    if problem.remedies:
        body["remedies"] = problem.remedies
    return body | problem.extra


def headers_of(exception: Exception, problem: Problem) -> dict[str, str]:
    """The headers that go with a problem; `retry_after_seconds` among its members becomes Retry-After."""
    headers = {}
    if challenge := getattr(exception, "auth_header", None):
        headers["WWW-Authenticate"] = challenge
    if wait := getattr(exception, "wait", None) or problem.extra.get("retry_after_seconds"):
        headers["Retry-After"] = f"{wait:.0f}"
    elif isinstance(problem, Busy):
        headers["Retry-After"] = "1"
    return headers


def problem_of(exception: Exception) -> Problem | None:
    """What the client is told of an exception; None where it is not the client's to mend."""
    match exception:
        case Problem():
            return exception
        case QuantityError():
            return of_quantity(exception)
        case ProtectedError() | RestrictedError():
            return in_use(exception)
        case DatabaseError():
            return problem_of_database(exception)
        case exceptions.APIException():
            return of_rest_framework(exception)
        case _:
            return of_django(exception)


def of_django(exception: Exception) -> Problem | None:
    if isinstance(exception, Http404):
        return nothing_here()
    if isinstance(exception, PermissionDenied):
        return RoleTooLow(str(exception) or "Your role does not allow this.")
    if isinstance(exception, DjangoValidationError):
        return bad_body(get_error_detail(exception))
    if isinstance(exception, RequestDataTooBig):
        return TooLarge("The body is larger than the server reads. Send it in parts.")
    if isinstance(exception, UNREADABLE):
        return Problem("The request cannot be read. Check its form and send it again.")
    return None


def of_rest_framework(exception: exceptions.APIException) -> Problem | None:
    detail = exception.detail
    if isinstance(exception, exceptions.ValidationError):
        return bad_body(detail)
    text = str(detail)
    if isinstance(exception, exceptions.NotFound):
        return nothing_here()
    if text.startswith("CSRF Failed"):
        return NoCSRFToken(f"{text} Load the page again, and send the csrftoken cookie's value in X-CSRFToken.")
    kind = REST_FRAMEWORK_KINDS.get(type(exception))
    if kind is not None:
        return kind(text)
    return Problem(text) if exception.status_code == Problem.status else None


def of_quantity(exception: QuantityError) -> Problem:
    """A quantity that reached an action in words which the material does not bear out."""
    if isinstance(exception, UnitMismatch):
        return UnitsDiffer(str(exception), missing=exception.missing)
    choices = exception.choices if isinstance(exception, AmbiguousUnit) else ()
    remedies = [{"kind": "use_unit", "text": f"Send the unit {choice}.", "unit": choice} for choice in choices]
    return Problem(str(exception), remedies=remedies)


def bad_body(detail: Any) -> BadBody:
    errors = list(pointed_errors(detail))
    where = errors[0]["pointer"] or "the body" if errors else "the body"
    first = f"{where}: {errors[0]['detail']}" if errors else "The body cannot be used."
    more = f" And {len(errors) - 1} more." if len(errors) > 1 else ""
    return BadBody(first + more, errors=errors)


def nothing_here() -> NotFound:
    return NotFound("There is nothing at this address. Check the path and the id.")


def in_use(exception: ProtectedError | RestrictedError) -> InUse:
    """Says what holds the record, in the models' own words, and that archiving is the way."""
    if isinstance(exception, ProtectedError):
        holders = exception.protected_objects
    else:
        holders = exception.restricted_objects
    kinds = sorted({str(type(holder)._meta.verbose_name_plural) for holder in holders})
    return InUse(
        f"It is used by {', '.join(kinds)}, whose history needs it. Archive it instead.",
        remedies=[{"kind": "archive", "text": "Archive it: it is no longer offered, and its history stays."}],
    )
