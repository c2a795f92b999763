"""The reports over HTTP: each a translation of one query."""
