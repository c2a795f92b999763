"""Settings, addresses and the server: knows every app; no app knows it."""
