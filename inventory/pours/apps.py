from django.apps import AppConfig


class PoursConfig(AppConfig):
    name = "inventory.pours"
    label = "pours"
