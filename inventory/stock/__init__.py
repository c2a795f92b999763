"""Lots, places and the ledger."""
