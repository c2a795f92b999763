"""Settings for tests. TEST_DATABASE=postgresql starts a PostgreSQL of its own; SQLite in a file otherwise."""

import os

os.environ.setdefault("SECRET_KEY", "only for tests")

from inventory.config.settings import *  # noqa: F403
from inventory.config.settings import POSTGRESQL_OPTIONS, SQLITE_OPTIONS, STORAGES
from tests.databases import postgresql_server, scratch_folder

TEST_DATABASE = os.environ.get("TEST_DATABASE", "sqlite")
if TEST_DATABASE == "postgresql":
    DATABASES = {"default": postgresql_server() | {"OPTIONS": POSTGRESQL_OPTIONS}}
else:
    # A file, not memory: threads and processes share it, as they do in a shop.
    path = str(scratch_folder() / "test.sqlite3")
    DATABASES = {
        "default": {
            "ENGINE": "django.db.backends.sqlite3",
            "NAME": path,
            "OPTIONS": SQLITE_OPTIONS,
            "TEST": {"NAME": path},
        }
    }

PASSWORD_HASHERS = ["django.contrib.auth.hashers.MD5PasswordHasher"]
STORAGES = STORAGES | {"staticfiles": {"BACKEND": "django.contrib.staticfiles.storage.StaticFilesStorage"}}
AXES_ENABLED = False
STATIC_ROOT = scratch_folder() / "static"
STATIC_ROOT.mkdir(exist_ok=True)
