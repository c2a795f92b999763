"""The shelf over HTTP."""
