"""Every address: the API of each app under /api/, its description, the admin pages, and the app's one page."""

from django.contrib import admin
from django.urls import URLPattern, URLResolver, include, path, re_path
from drf_spectacular.views import SpectacularAPIView, SpectacularSwaggerSplitView

from inventory.config.health import Health
from inventory.config.pages import front_end, no_such_path

api: list[URLPattern | URLResolver] = [
    path("", include("inventory.shop.urls")),
    path("", include("inventory.catalog.urls")),
    path("", include("inventory.stock.urls")),
    path("", include("inventory.purchasing.urls")),
    path("", include("inventory.jobs.urls")),
    path("", include("inventory.pours.urls")),
    path("", include("inventory.reports.urls")),
    path("health/", Health.as_view()),
    path("schema/", SpectacularAPIView.as_view(), name="schema"),
    path("docs/", SpectacularSwaggerSplitView.as_view(url_name="schema")),
    re_path("^(?P<path>.*)$", no_such_path),
]

urlpatterns: list[URLPattern | URLResolver] = [
    path("api/", include(api)),
    path("admin/", admin.site.urls),
    re_path("^.*$", front_end),
]

handler400 = "inventory.rest.handlers.bad_request"
handler403 = "inventory.rest.handlers.permission_denied"
handler404 = "inventory.rest.handlers.not_found"
handler500 = "inventory.rest.handlers.server_error"
