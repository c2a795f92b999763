from django.apps import AppConfig


class PurchasingConfig(AppConfig):
    name = "inventory.purchasing"
    label = "purchasing"
