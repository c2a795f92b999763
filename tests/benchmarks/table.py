"""What was measured, as tables that can be read, with the aims that were missed marked."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from tests.benchmarks.aims import AIMS, MOST_GROWTH, Aim

MISSED = "  << missed"


@dataclass(frozen=True, slots=True)
class Measured:
    """Milliseconds, medians; None where there is no such way to do it."""

    name: str
    note: str
    ours: float
    bare: float | None
    http: float | None

    @property
    def ratio(self) -> float | None:
        return self.ours / self.bare if self.bare else None


@dataclass(frozen=True, slots=True)
class Result:
    """One world on one database. built_in: seconds."""

    database: str
    size: int
    movements: int
    built_in: float
    measured: list[Measured]

    @classmethod
    def of(cls, written: dict[str, Any], *, database: str, size: int) -> "Result":
        measured = [Measured(**row) for row in written["measured"]]
        return cls(database, size, written["movements"], written["built_in"], measured)

    def row(self, name: str) -> Measured:
        return next(row for row in self.measured if row.name == name)


def print_tables(results: Sequence[Result]) -> None:
    print("Medians in milliseconds. ours: the action or query, commit included; bare: the SQL that the work needs, by")
    print(
        "hand through the driver, on the same database, in turn with ours; HTTP: the same by a signed-in client through"
    )
    print("middleware, view and JSON, within the process, no socket between.")
    for database in dict.fromkeys(result.database for result in results):
        of_database = [result for result in results if result.database == database]
        for result in of_database:
            print()
            print(f"{database}, {result.movements:,} movements (built in {result.built_in:.0f} s)")
            print(*_rows(result), sep="\n")
        if len(of_database) > 1:
            print()
            print(*_growth(of_database[0], of_database[-1]), sep="\n")


def _rows(result: Result) -> Iterator[str]:
    yield f"  {'':<26}{'ours':>10}{'bare':>10}{'ours/bare':>11}{'HTTP':>10}   aim"
    for row in result.measured:
        aim = AIMS[row.name]
        ratio = f"{row.ratio:.2f}" if row.ratio else ""
        yield (
            f"  {row.name:<26}{_ms(row.ours):>10}{_ms(row.bare):>10}{ratio:>11}{_ms(row.http):>10}   "
            f"{_aim(aim, row, result)}{f'   ({row.note})' if row.note else ''}"
        )


def _ms(value: float | None) -> str:
    return "" if value is None else f"{value:,.1f}"


def _aim(aim: Aim, row: Measured, result: Result) -> str:
    words, is_missed = [], False
    most = aim.ratio.get(result.database)
    if most is not None and row.ratio is not None:
        words.append(f"<= {most:g} x")
        is_missed |= row.ratio > most
    if aim.milliseconds is not None:
        words.append(f"< {aim.milliseconds:,} ms")
        is_missed |= row.ours >= aim.milliseconds
    return ", ".join(words) + (MISSED if is_missed else "")


def _growth(small: Result, large: Result) -> Iterator[str]:
    yield f"{small.database}: from {small.movements:,} to {large.movements:,} movements, times as long"
    yield f"  {'':<26}{'ours':>10}{'bare':>10}{'ours/bare':>11}{'':>10}   aim"
    for row in small.measured:
        later = large.row(row.name)
        ours, beside = later.ours / row.ours, ""
        if row.bare and later.bare:
            bare = later.bare / row.bare
            missed = MISSED if ours / bare > MOST_GROWTH else ""
            beside = f"{bare:>10.2f}{ours / bare:>11.2f}{'':>10}   <= {MOST_GROWTH:g} x{missed}"
        yield f"  {row.name:<26}{ours:>10.2f}{beside}"
