"""The real app in a real browser: served by its own command, driven by Chromium.

A machine without Chromium skips these tests with a plain message; in CI that is a failure.
"""

import os
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, Playwright, StorageState, sync_playwright

from tests.browser.hands import sign_in
from tests.browser.office import Office
from tests.browser.served import Served, serve

FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
LAPTOP = {"width": 1280, "height": 860}
PHONE = {"width": 390, "height": 844}


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    here = Path(__file__).parent
    for item in items:
        if here in item.path.parents:
            item.add_marker(pytest.mark.browser)
            item.add_marker(pytest.mark.xdist_group("browser"))


@pytest.fixture(scope="session")
def demo_shop(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    yield from serve(tmp_path_factory.mktemp("demo"), "--demo")


@pytest.fixture
def empty_shop(tmp_path: Path) -> Iterator[Served]:
    yield from serve(tmp_path)


@pytest.fixture(scope="session")
def office(demo_shop: Served) -> Office:
    """The owner of the demo shop at the API, to prepare what a test starts from."""
    return Office(demo_shop.address, demo_shop.manage("issue_token", "owner").split()[-1])


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


@pytest.fixture(scope="session")
def signed_in(chromium: Browser) -> Callable[[Served, str], StorageState]:
    """Who signed in to the demo shop once stays signed in for later tests."""
    kept: dict[tuple[str, str], StorageState] = {}

    def state_of(shop: Served, username: str) -> StorageState:
        if (shop.address, username) not in kept:
            context = chromium.new_context(base_url=shop.address)
            page = context.new_page()
            page.goto("/sign-in")
            sign_in(page, username)
            kept[shop.address, username] = context.storage_state()
            context.close()
        return kept[shop.address, username]

    return state_of


@pytest.fixture
def open_page(chromium: Browser, signed_in: Callable[[Served, str], StorageState]) -> Iterator[OpenPage]:
    """Opens a page of a shop in a fresh browser profile; fails the test on a script error or a broken answer.

    who: somebody of the demo shop who is signed in already. may_break: answers of 500 belong to the test.
    """
    contexts: list[BrowserContext] = []
    faults: list[str] = []

    def open_at(
        shop: Served,
        path: str = "/",
        *,
        who: str | None = None,
        size: dict[str, int] = LAPTOP,
        scheme: str = "light",
        may_break: bool = False,
    ) -> Page:
        context = chromium.new_context(
            viewport=size,  # type: ignore[arg-type]
            color_scheme=scheme,  # type: ignore[arg-type]
            has_touch=size["width"] < 700,
            base_url=shop.address,
            locale="en-US",
            timezone_id="America/Chicago",
            reduced_motion="reduce",
            storage_state=signed_in(shop, who) if who else None,
        )
        context.set_default_timeout(15_000)
        contexts.append(context)
        page = context.new_page()
        page.on("pageerror", lambda error: faults.append(f"script error on {page.url}: {error}"))
        page.on("console", lambda said: faults.append(f"{page.url}: {said.text}") if is_fault(said.text) else None)
        if not may_break:
            page.on("response", lambda sent: faults.append(f"{sent.status} {sent.url}") if sent.status > 499 else None)
        page.goto(path)
        return page

    yield open_at
    for context in contexts:
        context.close()
    assert faults == []


def is_fault(said: str) -> bool:
    """What the browser itself complains of on its console: a blocked script or style, a failed import."""
    return "Content Security Policy" in said or "Failed to fetch dynamically imported module" in said
