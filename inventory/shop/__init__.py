"""The shop itself: its settings, people, roles and change log."""
