"""The one page of the app: every address that is not the API's opens it, and its router shows the screen."""

from pathlib import Path

from django.conf import settings
from django.http import Http404, HttpRequest, HttpResponse
from django.views.decorators.cache import never_cache
from django.views.decorators.csrf import csrf_exempt, ensure_csrf_cookie
from django.views.decorators.http import require_safe

NOT_BUILT = """<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Lot &amp; Pour: screens not built</title>
<h1>The screens are not built yet</h1>
<p>Stop the server and start it with <code>uv run manage.py serve</code>, which builds them, or build them
by hand: <code>npm ci &amp;&amp; npm run build</code> in the folder <code>frontend</code>.</p>
<p>The API is at work meanwhile: <a href="/api/docs/">what it offers</a>.</p>
</html>
"""


@require_safe
@never_cache
@ensure_csrf_cookie
def front_end(request: HttpRequest) -> HttpResponse:
    """index.html of the built front end, never kept by the browser, or a page that says how to build it.

    An address that names a file (its last part has a dot) and got here is a file that is not there: 404.
    """
    if "." in request.path.rsplit("/", 1)[-1]:
        raise Http404
    index = Path(settings.FRONTEND_DIST) / "index.html"
    try:
        return HttpResponse(index.read_bytes())
    except FileNotFoundError:
        return HttpResponse(NOT_BUILT, status=503)


@csrf_exempt
def no_such_path(_request: HttpRequest, **_path: str) -> HttpResponse:
    """Whatever else is asked of the API."""
    raise Http404
