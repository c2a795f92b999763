"""Pours: what went in, from which lot."""
