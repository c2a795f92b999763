"""What must hold on both databases is tested on PostgreSQL too, in a server of its own."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
ON_BOTH = [  # the longest first
    "api/test_every_answer_is_documented.py",
    "reports",
    "pours",
    "rest",
    "stock",
    "purchasing",
    "jobs",
    "catalog",
    "shop",
]


@pytest.mark.skipif(os.environ.get("TEST_DATABASE") == "postgresql", reason="this run is on PostgreSQL already")
@pytest.mark.parametrize("part", ON_BOTH)
def test_the_same_holds_on_postgresql(part: str) -> None:
    command = [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", "-n0", f"tests/{part}"]
    environment = {name: value for name, value in os.environ.items() if not name.startswith("PYTEST_")}

    done = subprocess.run(
        command,
        cwd=ROOT,
        env=environment | {"TEST_DATABASE": "postgresql"},
        capture_output=True,
        text=True,
        check=False,
    )

    assert done.returncode == 0, done.stdout[-6000:] + done.stderr[-2000:]
    print(done.stdout.strip().splitlines()[-1])
