"""Start the shop: build what is missing, migrate, fill the demo if asked, and serve."""

import os
import sys
from argparse import ArgumentParser
from pathlib import Path
from typing import Any

from django.conf import settings
from django.core.management import call_command
from django.core.management.base import BaseCommand, CommandError
from django.db import OperationalError, connection

from inventory.config.front_end import BuildFailed, build, is_built
from inventory.rest.idempotency import forget_old_keys
from inventory.shop.models import Person
from inventory.stock.triggers import missing_triggers


class Command(BaseCommand):
    help = "Start the app: builds the front end if needed, migrates the database, serves the API and the screens."
    requires_migrations_checks = False

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("--demo", action="store_true", help="fill an empty database with the invented demo shop")
        parser.add_argument("--host", default="127.0.0.1", help="0.0.0.0 lets phones in the same network in")
        parser.add_argument("--port", type=int, default=8000)
        parser.add_argument("--workers", type=int, default=2, help="how many processes answer")

    def handle(self, *, demo: bool, host: str, port: int, workers: int, **options: Any) -> None:
        self.prepare()
        if demo:
            call_command("fill_demo", stdout=self.stdout, stderr=self.stderr)
        address = f"http://{'127.0.0.1' if host == '0.0.0.0' else host}:{port}/"
        self.stdout.write("")
        self.stdout.write(self.style.SUCCESS(f"Lot & Pour answers at {address}"))
        if demo:
            self.stdout.write("Sign in as  owner  |  crew  |  viewer  with the password  pour-slowly  (demo only)")
        elif not Person.objects.exists():
            self.stdout.write("Open it in a browser to set up the shop and its first owner.")
        self.stdout.write("Stop it with Ctrl+C. What was recorded stays.")
        self.stdout.flush()
        connection.close()
        os.environ.setdefault("DJANGO_SETTINGS_MODULE", "inventory.config.settings")
        os.chdir(settings.BASE_DIR)
        os.execv(sys.executable, [sys.executable, "-m", "granian", *self.server_options(host, port, workers)])

    def prepare(self) -> None:
        frontend = Path(settings.BASE_DIR) / "frontend"
        if not is_built(frontend):
            try:
                build(frontend)
            except BuildFailed as error:
                raise CommandError(str(error)) from error
        try:
            connection.ensure_connection()
        except OperationalError as error:
            raise CommandError(f"The database cannot be reached; see DATABASE_URL. {error}") from error
        call_command("migrate", interactive=False, verbosity=0)
        forget_old_keys()
        call_command("collectstatic", interactive=False, verbosity=0)
        if missing := missing_triggers(connection):
            raise CommandError(f"The ledger's guards are missing: {', '.join(missing)}. Run manage.py migrate.")

    def server_options(self, host: str, port: int, workers: int) -> list[str]:
        return [
            "inventory.config.wsgi:application",
            *("--interface", "wsgi"),
            *("--host", host),
            *("--port", str(port)),
            *("--workers", str(workers)),
            *("--blocking-threads", "4"),
            *("--backpressure", "64"),
            "--respawn-failed-workers",
            "--no-ws",
            *("--log-level", "warning"),
        ]
