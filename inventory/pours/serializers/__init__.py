"""The shape of pours in JSON."""
