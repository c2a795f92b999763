from django.apps import AppConfig
from django.db.models.signals import post_migrate


class StockConfig(AppConfig):
    name = "inventory.stock"
    label = "stock"

    def ready(self) -> None:
        from inventory.stock.triggers import install_after_migrate

        post_migrate.connect(install_after_migrate, sender=self, dispatch_uid="stock.triggers")
