"""Every address that looks across floors, below /api/. Where a lower floor has the same one, these come first."""

from django.urls import path

from inventory.reports.views import cost, movements, stock, today, trace

urlpatterns = [
    path("movements/", movements.MovementsAcrossFloors.as_view()),
    path("today/", today.NeedsAHand.as_view()),
    path("lots/<int:pk>/uses/", trace.LotUses.as_view()),
    path("pieces/<int:pk>/sources/", trace.PieceSources.as_view()),
    path("jobs/<int:pk>/sources/", trace.JobSources.as_view()),
    path("pours/<int:pk>/sources/", trace.PourSources.as_view()),
    path("reports/cost-per-sqft/", cost.CostPerSqft.as_view()),
    path("reports/cost-per-sqft/movements/", cost.CostMovements.as_view()),
    path("reports/reorder/", stock.ReorderReport.as_view()),
    path("reports/expiring/", stock.ExpiringReport.as_view()),
    path("reports/value/", stock.ValueReport.as_view()),
    path("reports/mass-balance/", stock.MassBalanceReport.as_view()),
]
