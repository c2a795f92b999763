from django.apps import AppConfig


class ReportsConfig(AppConfig):
    name = "inventory.reports"
    label = "reports"
