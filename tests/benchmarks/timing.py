"""Times taken in turn, so that whatever else the machine does falls on each alike."""

from collections.abc import Callable, Mapping
from statistics import median
from time import perf_counter

Act = Callable[[], object]


def medians(acts: Mapping[str, Act], *, repeat: int) -> dict[str, float]:
    """Milliseconds of each act: the median of so many turns, after one that does not count."""
    taken: dict[str, list[float]] = {name: [] for name in acts}
    for turn in range(repeat + 1):
        for name, act in acts.items():
            begun = perf_counter()
            act()
            if turn:
                taken[name].append((perf_counter() - begun) * 1000)
    return {name: median(times) for name, times in taken.items()}
