from django.urls import path
from drf_spectacular.views import SpectacularAPIView

from tests.rest import example_views as views

urlpatterns = [
    path("api/schema/", SpectacularAPIView.as_view()),
    path("api/suppliers/", views.Suppliers.as_view()),
    path("api/suppliers/<int:pk>/", views.SupplierRecord.as_view()),
    path("api/suppliers/<int:pk>/packs/", views.SupplierPacks.as_view()),
    path("api/packs/", views.Packs.as_view()),
    path("api/echo/", views.Echo.as_view()),
    path("api/reports/cost/", views.CostReport.as_view()),
    path("api/open/", views.Open.as_view()),
    path("api/raise/<str:what>/", views.Raise.as_view()),
]
handler400 = "inventory.rest.handlers.bad_request"
handler403 = "inventory.rest.handlers.permission_denied"
handler404 = "inventory.rest.handlers.not_found"
handler500 = "inventory.rest.handlers.server_error"
