"""The front end's own checks: lint, types and vitest, with the Node that comes as a Python package."""

import json
import subprocess
import sysconfig
from os import environ, pathsep
from pathlib import Path

import pytest
from filelock import FileLock

from inventory.config.front_end import build, install, is_built

FRONTEND = Path(__file__).resolve().parents[1] / "frontend"

pytestmark = pytest.mark.front_end


def npm(*arguments: str) -> None:
    environment = environ | {"PATH": f"{sysconfig.get_path('scripts')}{pathsep}{environ.get('PATH', '')}"}
    done = subprocess.run(
        ["npm", *arguments], cwd=FRONTEND, env=environment, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, f"npm {' '.join(arguments)}\n{done.stdout[-6000:]}\n{done.stderr[-4000:]}"


@pytest.fixture(scope="session", autouse=True)
def _packages() -> None:
    with FileLock(str(FRONTEND / ".packages.lock")):
        install(FRONTEND)


def test_the_front_end_is_clean() -> None:
    npm("run", "lint")


def test_the_front_end_types_come_from_the_committed_schema(tmp_path: Path) -> None:
    made = tmp_path / "schema.gen.ts"
    script = json.loads((FRONTEND / "package.json").read_text())["scripts"]["types"]
    npm("exec", "--", *script.replace("src/api/schema.gen.ts", str(made)).split())

    fresh, committed = (path.read_text() for path in (made, FRONTEND / "src/api/schema.gen.ts"))
    assert fresh == committed, "run: npm run types, in frontend/"


def test_the_front_end_builds() -> None:
    with FileLock(str(FRONTEND / ".packages.lock")):
        if not is_built(FRONTEND):
            build(FRONTEND)
    assert (FRONTEND / "dist" / "index.html").exists()


def test_the_front_end_s_own_tests_pass() -> None:
    npm("test", "--", "--run")
