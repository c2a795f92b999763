"""The WSGI application that the server runs."""

import gc
import os

from django.core.wsgi import get_wsgi_application

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "inventory.config.settings")

application = get_wsgi_application()

# What is loaded now stays for as long as the process does: the collector need not go through it again and again while
# an answer of many thousand rows is put together.
gc.collect()
gc.freeze()
gc.set_threshold(20_000, 20, 20)
