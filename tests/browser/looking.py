"""What can be seen to be wrong with a page without knowing what it is for."""

import itertools
from collections.abc import Sequence

from playwright.sync_api import Page

from tests.browser.served import ROOT

AXE = ROOT / "frontend" / "node_modules" / "axe-core" / "axe.min.js"
WCAG_22_AA = ("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa")
RUN = """async (rules) => (await axe.run(document, {runOnly: rules, resultTypes: ['violations']})).violations.map(
    v => `${v.id}: ${v.help} — ${v.nodes.map(n => n.target.join(' ')).slice(0, 3).join(' | ')}`)"""


def violations(page: Page, only: Sequence[str] = ()) -> list[str]:
    """What axe finds against WCAG 2.2 A and AA on the page as it stands; or by some of its rules only."""
    if not page.evaluate("() => 'axe' in window"):
        page.evaluate(AXE.read_text())
    rules = {"type": "rule", "values": list(only)} if only else {"type": "tag", "values": list(WCAG_22_AA)}
    return [str(line) for line in page.evaluate(RUN, rules)]


def overflow(page: Page) -> list[str]:
    """Why the page would be drawn sideways: how much wider it is than the window, and what sticks out of it."""
    return [
        str(line)
        for line in page.evaluate(
            """() => {
                const root = document.documentElement, over = root.scrollWidth - root.clientWidth
                if (over <= 0) return []
                const out = [...document.querySelectorAll('main *')].filter(
                    (e) => e.getBoundingClientRect().right > root.clientWidth + 1)
                return [`${over} px too wide`, ...out.slice(0, 3).map((e) => `${e.tagName}.${e.className}`)]
            }"""
        )
    ]


def headings(page: Page) -> list[str]:
    """What is wrong with the page's headings: there is one first heading, and no level is left out on the way down."""
    levels: list[int] = page.evaluate(
        "() => [...document.querySelectorAll('h1,h2,h3,h4')].filter(h => h.offsetParent).map(h => +h.tagName[1])"
    )
    wrong = [] if levels.count(1) == 1 else [f"{levels.count(1)} first headings"]
    return wrong + [f"h{b} after h{a}" for a, b in itertools.pairwise(levels) if b > a + 1]
