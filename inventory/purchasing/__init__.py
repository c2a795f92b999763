"""Deliveries and what they cost."""
