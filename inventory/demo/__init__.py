"""An invented shop and eighteen months of its work, made by the same actions that a real shop uses."""
