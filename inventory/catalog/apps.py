from django.apps import AppConfig


class CatalogConfig(AppConfig):
    name = "inventory.catalog"
    label = "catalog"
