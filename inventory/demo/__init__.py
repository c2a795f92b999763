"""An invented shop and its history."""
