"""The addresses of purchasing, below /api/."""

from django.urls import path

from inventory.purchasing import views

urlpatterns = [
    path("deliveries/", views.Deliveries.as_view()),
    path("deliveries/<int:pk>/", views.OneDelivery.as_view()),
    path("deliveries/<int:pk>/price/", views.PriceDelivery.as_view()),
    path("deliveries/<int:pk>/charges/", views.ChargeDelivery.as_view()),
    path("deliveries/<int:pk>/correct/", views.CorrectDelivery.as_view()),
    path("deliveries/<int:pk>/reverse/", views.ReverseDelivery.as_view()),
]
