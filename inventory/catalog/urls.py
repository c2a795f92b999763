"""The addresses of the catalogue, below /api/."""

from django.urls import path

from inventory.catalog import views

urlpatterns = [
    path("units/", views.Units.as_view()),
    path("materials/", views.Materials.as_view()),
    path("materials/<int:pk>/", views.OneMaterial.as_view()),
    path("materials/<int:pk>/archive/", views.ArchiveMaterial.as_view()),
    path("materials/<int:pk>/unarchive/", views.UnarchiveMaterial.as_view()),
    path("suppliers/", views.Suppliers.as_view()),
    path("suppliers/<int:pk>/", views.OneSupplier.as_view()),
    path("suppliers/<int:pk>/archive/", views.ArchiveSupplier.as_view()),
    path("suppliers/<int:pk>/unarchive/", views.UnarchiveSupplier.as_view()),
    path("packs/", views.Packs.as_view()),
    path("packs/<int:pk>/", views.OnePack.as_view()),
    path("packs/<int:pk>/archive/", views.ArchivePack.as_view()),
    path("packs/<int:pk>/unarchive/", views.UnarchivePack.as_view()),
    path("resin-systems/", views.ResinSystems.as_view()),
    path("resin-systems/<int:pk>/", views.OneResinSystem.as_view()),
    path("resin-systems/<int:pk>/archive/", views.ArchiveResinSystem.as_view()),
    path("resin-systems/<int:pk>/unarchive/", views.UnarchiveResinSystem.as_view()),
]
