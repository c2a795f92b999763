"""The rules of the house that machines can check: types, lint, floors, and a schema that has not drifted."""

import subprocess
import sys
from pathlib import Path

import pytest
from django.core.management import call_command

ROOT = Path(__file__).resolve().parents[1]


def run(*command: str) -> None:
    done = subprocess.run([sys.executable, "-m", *command], cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, f"{' '.join(command)}\n{done.stdout}\n{done.stderr}"


def test_the_code_is_clean() -> None:
    run("ruff", "check", ".")


def test_the_code_is_formatted() -> None:
    run("ruff", "format", "--check", ".")


def test_types_hold() -> None:
    run("mypy")


def test_imports_point_down_only() -> None:
    done = subprocess.run(
        [Path(sys.executable).with_name("lint-imports")], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stdout


def test_the_committed_schema_is_the_one_that_is_served(tmp_path: Path) -> None:
    fresh = tmp_path / "schema.yaml"

    call_command("spectacular", "--file", str(fresh), "--validate", "--fail-on-warn")

    committed = (ROOT / "inventory" / "schema.yaml").read_text()
    assert fresh.read_text() == committed, (
        "run: uv run manage.py spectacular --file inventory/schema.yaml --validate --fail-on-warn"
    )


@pytest.mark.django_db
def test_every_change_of_a_model_has_its_migration() -> None:
    call_command("makemigrations", "--check", "--dry-run", verbosity=0)


def test_no_file_needs_a_table_of_contents() -> None:
    """At most 400 lines in a module, migrations aside."""
    long = {
        str(path.relative_to(ROOT)): lines
        for path in (ROOT / "inventory").rglob("*.py")
        if "migrations" not in path.parts and (lines := len(path.read_text().splitlines())) > 400
    }
    assert long == {}
