"""How long the work takes beside the bare SQL that it needs: `uv run python -m tests.benchmarks`."""
