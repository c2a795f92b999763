"""Read-only figures across the whole shop."""
