from django.apps import AppConfig


class ShopConfig(AppConfig):
    name = "inventory.shop"
    label = "shop"
