"""The addresses of customers, jobs and pieces, below /api/."""

from django.urls import path

from inventory.jobs import views

urlpatterns = [
    path("customers/", views.Customers.as_view()),
    path("customers/<int:pk>/", views.OneCustomer.as_view()),
    path("customers/<int:pk>/archive/", views.ArchiveCustomer.as_view()),
    path("customers/<int:pk>/unarchive/", views.UnarchiveCustomer.as_view()),
    path("jobs/", views.Jobs.as_view()),
    path("jobs/<int:pk>/", views.OneJob.as_view()),
    path("jobs/<int:pk>/finish/", views.FinishJob.as_view()),
    path("jobs/<int:pk>/reopen/", views.ReopenJob.as_view()),
    path("jobs/<int:pk>/hand-over/", views.HandOverJob.as_view()),
    path("jobs/<int:pk>/archive/", views.ArchiveJob.as_view()),
    path("jobs/<int:pk>/unarchive/", views.UnarchiveJob.as_view()),
    path("jobs/<int:pk>/pieces/", views.AddPieces.as_view()),
    path("pieces/", views.Pieces.as_view()),
    path("pieces/<int:pk>/", views.OnePiece.as_view()),
    path("pieces/<int:pk>/scrap/", views.ScrapPiece.as_view()),
    path("pieces/<int:pk>/unscrap/", views.UnscrapPiece.as_view()),
]
