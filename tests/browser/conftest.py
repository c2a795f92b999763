"""The real app in a real browser: served by its own command, driven by Chromium.

A machine without Chromium skips these tests with a plain message; in CI that is a failure.
"""

import os
import shutil
import signal
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest
from filelock import FileLock
from playwright.sync_api import Browser, Page, Playwright, expect, sync_playwright

from inventory.config.front_end import build, is_built

ROOT = Path(__file__).resolve().parents[2]
FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
AXE = ROOT / "frontend" / "node_modules" / "axe-core" / "axe.min.js"
PHONE = {"width": 390, "height": 844}
LAPTOP = {"width": 1280, "height": 860}


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    here = Path(__file__).parent
    for item in items:
        if here in item.path.parents:
            item.add_marker(pytest.mark.browser)
            item.add_marker(pytest.mark.xdist_group("browser"))


@dataclass
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
    """The app as the README starts it, on a port of its own."""
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


@pytest.fixture(scope="session")
def demo_shop(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    yield from serve(tmp_path_factory.mktemp("demo"), "--demo")


@pytest.fixture
def empty_shop(tmp_path: Path) -> Iterator[Served]:
    yield from serve(tmp_path)


@pytest.fixture(scope="session")
def driver() -> Iterator[Playwright]:
    with sync_playwright() as playwright:
        yield playwright


@pytest.fixture(scope="session")
def chromium(driver: Playwright) -> Iterator[Browser]:
    path = shutil.which("chromium")
    if path is None:
        message = "there is no Chromium on this machine: apt-get install chromium"
        if os.environ.get("CI"):
            pytest.fail(message)
        pytest.skip(message)
    browser = driver.chromium.launch(executable_path=path, args=FLAGS)
    yield browser
    browser.close()


OpenPage = Callable[..., Page]


@pytest.fixture
def open_page(chromium: Browser) -> Iterator[OpenPage]:
    """Opens a page of a shop in a fresh browser profile; fails the test on a script error or a broken request."""
    contexts = []
    faults: list[str] = []

    def open_at(shop: Served, path: str = "/", *, size: dict[str, int] = LAPTOP, scheme: str = "light") -> Page:
        context = chromium.new_context(viewport=size, color_scheme=scheme, base_url=shop.address, locale="en-US")  # type: ignore[arg-type]
        context.set_default_timeout(15_000)
        contexts.append(context)
        page = context.new_page()
        page.on("pageerror", lambda error: faults.append(f"script error on {page.url}: {error}"))
        page.on(
            "response", lambda answer: faults.append(f"{answer.status} {answer.url}") if answer.status >= 500 else None
        )
        page.goto(path)
        return page

    yield open_at
    for context in contexts:
        context.close()
    assert faults == []


def sign_in(page: Page, username: str = "owner", password: str = "pour-slowly") -> None:
    page.get_by_label("Username").fill(username)
    page.get_by_label("Password", exact=True).fill(password)
    page.get_by_role("button", name="Sign in").click()
    expect(page.get_by_role("button", name="Sign in")).to_have_count(0)


def violations(page: Page) -> list[str]:
    """What axe finds against WCAG 2.2 A and AA on the page as it stands."""
    page.evaluate(AXE.read_text())
    found = page.evaluate(
        "async () => (await axe.run(document, {runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']}))"
        ".violations.map(v => `${v.id}: ${v.help} — ${v.nodes.map(n => n.target.join(' ')).slice(0, 3).join(' | ')}`)"
    )
    return [str(line) for line in found]
