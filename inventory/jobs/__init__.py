"""Customers, jobs and the tops they are for."""
