"""The addresses of pours, below /api/."""

from django.urls import path

from inventory.pours import views

urlpatterns = [
    path("pours/", views.Pours.as_view()),
    path("pours/<int:pk>/", views.OnePour.as_view()),
    path("pours/<int:pk>/complete/", views.CompletePour.as_view()),
    path("pours/<int:pk>/additions/", views.AddToPour.as_view()),
    path("pours/<int:pk>/correct/", views.CorrectPour.as_view()),
    path("pours/<int:pk>/reverse/", views.ReversePour.as_view()),
    path("pours/<int:pk>/cancel/", views.CancelPour.as_view()),
    path("pours/<int:pk>/explain/", views.ExplainPour.as_view()),
]
