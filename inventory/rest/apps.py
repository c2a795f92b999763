from django.apps import AppConfig


class RestConfig(AppConfig):
    name = "inventory.rest"
    label = "rest"
