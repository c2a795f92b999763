from django.apps import AppConfig


class DemoConfig(AppConfig):
    name = "inventory.demo"
    label = "demo"
