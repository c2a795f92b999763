"""Answers where no view of ours is reached: problem details under /api/, Django's plain pages elsewhere.

`config.urls` names them: handler400, handler403, handler404, handler500.
"""

from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.views import defaults

from inventory.rest.errors import RoleTooLow, ServerError, nothing_here, plain_answer
from inventory.rest.problems import Problem


def is_api(request: HttpRequest) -> bool:
    return request.path.startswith("/api/")


def bad_request(request: HttpRequest, exception: Exception) -> HttpResponseBase:
    if is_api(request):
        return plain_answer(Problem("The request cannot be read. Check its form and send it again."))
    return defaults.bad_request(request, exception)


def permission_denied(request: HttpRequest, exception: Exception) -> HttpResponseBase:
    if is_api(request):
        return plain_answer(RoleTooLow("Your role does not allow this."))
    return defaults.permission_denied(request, exception)


def not_found(request: HttpRequest, exception: Exception) -> HttpResponseBase:
    if is_api(request):
        return plain_answer(nothing_here())
    return defaults.page_not_found(request, exception)


def server_error(request: HttpRequest) -> HttpResponse:
    """Says nothing of the cause: that is in the server's log."""
    if is_api(request):
        return plain_answer(ServerError("The fault is on this side and was logged. Nothing was written."))
    return defaults.server_error(request)
