"""`uv run python -m tests.benchmarks`: our time beside that of the bare SQL, on both databases, at growing sizes.

Each database and size is built and measured in a process of its own, on a database of its own that is thrown away
afterwards. It measures and never fails: an aim that is missed is marked in the table.
"""

import argparse
import json
import os
import subprocess
import sys
from collections.abc import Sequence

from tests.benchmarks.table import Result, print_tables

DATABASES = ("sqlite", "postgresql")
SIZES = (10_000, 100_000, 1_000_000)


def options(arguments: Sequence[str] | None = None) -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks", description=__doc__.splitlines()[0])
    parser.add_argument("--sizes", type=_sizes, default=SIZES, help="movements, comma-separated; 10000,100000,1000000")
    parser.add_argument("--databases", type=_databases, default=DATABASES, help="sqlite,postgresql")
    parser.add_argument("--repeat", type=int, default=60, help="turns of each pour; reports take a third of them")
    return parser.parse_args(arguments)


def _sizes(text: str) -> tuple[int, ...]:
    return tuple(sorted(int(size.replace("_", "")) for size in text.split(",")))


def _databases(text: str) -> tuple[str, ...]:
    chosen = tuple(text.split(","))
    if unknown := set(chosen) - set(DATABASES):
        raise argparse.ArgumentTypeError(f"{', '.join(unknown)}: there are {', '.join(DATABASES)}")
    return chosen


def measure(database: str, size: int, repeat: int) -> Result:
    """One world, built and measured in a process of its own."""
    command = [sys.executable, "-m", "tests.benchmarks.one_world", str(size), str(repeat)]
    environment = os.environ | {"TEST_DATABASE": database, "DJANGO_SETTINGS_MODULE": "tests.settings"}
    done = subprocess.run(command, env=environment, stdout=subprocess.PIPE, check=True)
    return Result.of(json.loads(done.stdout.splitlines()[-1]), database=database, size=size)


def main() -> None:
    chosen = options()
    results = []
    for database in chosen.databases:
        for size in chosen.sizes:
            print(f"{database}, {size:,} movements …", file=sys.stderr, flush=True)
            results.append(measure(database, size, chosen.repeat))
    print_tables(results)


if __name__ == "__main__":
    main()
