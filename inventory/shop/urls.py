"""The addresses of the shop's settings, people and sessions, below /api/."""

from django.urls import path

from inventory.shop import views

urlpatterns = [
    path("session/", views.SessionView.as_view()),
    path("session/password/", views.ChangeOwnPassword.as_view()),
    path("set-up/", views.SetUpShop.as_view()),
    path("shop/", views.OneShop.as_view()),
    path("people/", views.People.as_view()),
    path("people/<int:pk>/", views.OnePerson.as_view()),
    path("people/<int:pk>/password/", views.ResetPassword.as_view()),
    path("people/<int:pk>/token/", views.PersonToken.as_view()),
    path("changes/", views.Changes.as_view()),
]
