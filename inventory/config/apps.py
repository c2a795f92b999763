from django.apps import AppConfig


class ConfigConfig(AppConfig):
    name = "inventory.config"
    label = "config"
