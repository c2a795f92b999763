from django.apps import AppConfig


class JobsConfig(AppConfig):
    name = "inventory.jobs"
    label = "jobs"
