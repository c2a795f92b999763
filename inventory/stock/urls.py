"""The addresses of the shelf, below /api/."""

from django.urls import path

from inventory.stock.views import acts, blends, counts, ledger, lots, places

urlpatterns = [
    path("places/", places.Places.as_view()),
    path("places/<int:pk>/", places.OnePlace.as_view()),
    path("shelf/", places.Shelf.as_view()),
    path("lots/", lots.Lots.as_view()),
    path("lots/<int:pk>/", lots.OneLot.as_view()),
    path("lots/<int:pk>/notes/", lots.NoteLot.as_view()),
    path("lots/<int:pk>/open/", acts.OpenLot.as_view()),
    path("lots/<int:pk>/undo-opening/", acts.UndoOpenLot.as_view()),
    path("lots/<int:pk>/move/", acts.MoveLot.as_view()),
    path("lots/<int:pk>/write-off/", acts.WriteOffLot.as_view()),
    path("lots/<int:pk>/return/", acts.ReturnLot.as_view()),
    path("lots/<int:pk>/give/", acts.GiveLot.as_view()),
    path("lots/<int:pk>/empty/", acts.EmptyLot.as_view()),
    path("lots/<int:pk>/hold/", acts.HoldLot.as_view()),
    path("lots/<int:pk>/reject/", acts.RejectLot.as_view()),
    path("lots/<int:pk>/release/", acts.ReleaseLot.as_view()),
    path("stock-counts/", counts.StockCounts.as_view()),
    path("stock-counts/<int:pk>/", counts.OneStockCount.as_view()),
    path("stock-counts/<int:pk>/undo/", counts.UndoStockCount.as_view()),
    path("blends/", blends.Blends.as_view()),
    path("blends/<int:pk>/", blends.OneBlend.as_view()),
    path("blends/<int:pk>/undo/", blends.UndoBlend.as_view()),
    path("postings/<int:pk>/", ledger.OnePosting.as_view()),
    path("postings/<int:pk>/reverse/", ledger.ReversePosting.as_view()),
]
