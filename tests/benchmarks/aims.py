"""What is aimed at."""

from dataclasses import dataclass, field

POUR = "complete a 12-line pour"
USES = "uses of a lot"
SOURCES = "sources of a job"
MONTHLY = "cost per sq ft by month"
TODAY = "today's page"


@dataclass(frozen=True, slots=True)
class Aim:
    """ratio: by database, the most that ours may take, times the bare SQL. milliseconds: what it stays under."""

    ratio: dict[str, float] = field(default_factory=dict)
    milliseconds: int | None = None


AIMS = {
    POUR: Aim({"sqlite": 5, "postgresql": 2}),
    USES: Aim({"sqlite": 1.5, "postgresql": 1.5}),
    SOURCES: Aim({"sqlite": 1.5, "postgresql": 1.5}),
    MONTHLY: Aim({"sqlite": 1.5, "postgresql": 1.5}, milliseconds=1000),
    TODAY: Aim(milliseconds=300),
}
MOST_GROWTH = 1.3
"""Ours may grow so many times as much as the bare SQL, from the smallest to the largest size."""
