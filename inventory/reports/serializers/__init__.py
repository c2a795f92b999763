"""The shapes of the reports in JSON."""
