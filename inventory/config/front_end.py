"""Building the front end with the Node that comes as a Python package, only when its sources changed."""

import hashlib
import os
import subprocess
import sys
import sysconfig
from collections.abc import Iterator
from pathlib import Path

SOURCES = ("package.json", "package-lock.json", "index.html", "vite.config.ts", "tsconfig.json", "src", "public")
BUILT_FROM = "built-from"
INSTALLED_FROM = ".installed-from"


class BuildFailed(Exception):
    """A step of the build ended with an error; its output says which."""


def is_built(frontend: Path) -> bool:
    """Whether what stands in dist/ was built from the sources as they are."""
    stamp = frontend / "dist" / BUILT_FROM
    return stamp.exists() and stamp.read_text() == fingerprint(frontend)


def build(frontend: Path) -> None:
    """Install the front end's packages from their lock file and build it into dist/. Raises BuildFailed."""
    print("Building the front end (about a minute, once) ...", flush=True)
    install(frontend)
    run(["npm", "run", "--silent", "build"], frontend)
    run([sys.executable, "-m", "whitenoise.compress", "--quiet", "dist"], frontend)
    (frontend / "dist" / BUILT_FROM).write_text(fingerprint(frontend))


def install(frontend: Path) -> None:
    """Install the packages that the lock file names, unless they are there. Raises BuildFailed."""
    stamp = frontend / "node_modules" / INSTALLED_FROM
    wanted = hashlib.sha256((frontend / "package-lock.json").read_bytes()).hexdigest()
    if stamp.exists() and stamp.read_text() == wanted:
        return
    run(["npm", "ci", "--no-audit", "--no-fund", "--loglevel=error"], frontend)
    stamp.write_text(wanted)


def run(command: list[str], folder: Path) -> None:
    """Run a tool with this environment's own Node first on the PATH."""
    scripts = sysconfig.get_path("scripts")
    environment = os.environ | {"PATH": f"{scripts}{os.pathsep}{os.environ.get('PATH', '')}"}
    try:
        subprocess.run(command, cwd=folder, env=environment, check=True)
    except (OSError, subprocess.CalledProcessError) as error:
        raise BuildFailed(f"{' '.join(command)} in {folder.name}/ did not succeed: {error}") from error


def fingerprint(frontend: Path) -> str:
    digest = hashlib.sha256()
    for path in sources(frontend):
        digest.update(path.relative_to(frontend).as_posix().encode())
        digest.update(path.read_bytes())
    return digest.hexdigest()


def sources(frontend: Path) -> Iterator[Path]:
    for name in SOURCES:
        path = frontend / name
        if path.is_dir():
            yield from sorted(found for found in path.rglob("*") if found.is_file())
        elif path.exists():
            yield path
