"""The shop as the README starts it: its own serve command, on a port and in a folder of its own."""

import os
import signal
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from filelock import FileLock

from inventory.config.front_end import build, is_built

ROOT = Path(__file__).resolve().parents[2]


@dataclass(frozen=True)
class Served:
    """A running shop: its address, and the folder that its database lives in."""

    address: str
    folder: Path

    def manage(self, *arguments: str) -> str:
        done = subprocess.run(
            [sys.executable, "manage.py", *arguments],
            cwd=ROOT,
            env=environment(self.folder),
            capture_output=True,
            text=True,
            check=True,
        )
        return done.stdout.strip()


def environment(folder: Path) -> dict[str, str]:
    kept = {name: value for name, value in os.environ.items() if name not in ("SECRET_KEY", "DJANGO_SETTINGS_MODULE")}
    return kept | {"VAR_DIR": str(folder), "DJANGO_SETTINGS_MODULE": "inventory.config.settings"}


def free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port: int = probe.getsockname()[1]
        return port


def serve(folder: Path, *options: str) -> Iterator[Served]:
    """Start the shop, hand it over once it answers, and end it with all its processes."""
    with FileLock(str(ROOT / "frontend" / ".packages.lock")):
        if not is_built(ROOT / "frontend"):
            build(ROOT / "frontend")
    port = free_port()
    command = [sys.executable, "manage.py", "serve", "--port", str(port), "--workers", "1", *options]
    log = (folder / "serve.log").open("w")
    process = subprocess.Popen(
        command, cwd=ROOT, env=environment(folder), stdout=log, stderr=subprocess.STDOUT, start_new_session=True
    )
    address = f"http://127.0.0.1:{port}"
    try:
        wait_for(f"{address}/api/health/", process, folder / "serve.log")
        yield Served(address, folder)
    finally:
        os.killpg(process.pid, signal.SIGTERM)
        process.wait(timeout=20)
        log.close()


def wait_for(address: str, process: "subprocess.Popen[bytes]", log: Path, seconds: int = 180) -> None:
    until = time.monotonic() + seconds
    while time.monotonic() < until:
        if process.poll() is not None:
            break
        try:
            with urllib.request.urlopen(address, timeout=2):
                return
        except OSError:
            time.sleep(0.2)
    raise AssertionError(f"the app did not start:\n{log.read_text()[-4000:]}")
