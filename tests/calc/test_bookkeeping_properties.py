"""The pure rules of the ledger against an independent telling of them, over tens of thousands of random acts."""

from collections import Counter
from random import Random

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.calc.memory_ledger import MemoryLedger
from tests.random_shop import DEEPEST, RandomShop

ACTS = 220
RUNS = 100


def run(seed: int) -> RandomShop:
    ledger = MemoryLedger()
    shop = RandomShop(ledger, Random(seed))
    shop.run(ACTS)
    shop.compare_history()
    money_is_kept(ledger)
    return shop


def money_is_kept(ledger: MemoryLedger) -> None:
    """Per lot and over all: what came in, in quantity and in money, is here or went; transfers net to nothing."""
    for lot in ledger.came_to:
        lines = [(key, line) for key, line in enumerate(ledger.lines) if line.lot == lot]
        moved = [line for _, line in lines if line.kind == "moved"]
        assert (sum(line.quantity for line in moved), sum(line.value for line in moved)) == (0, 0)
        came = ledger.inflow_of(lot)
        gone = [line for _, line in lines if line.kind != "moved" and not ledger.is_inflow(line)]
        here = [held for spot, held in ledger.holdings.items() if spot[0] == lot]
        assert came[0] + sum(line.quantity for line in gone) == sum(held.quantity for held in here)
        assert came[1] + sum(line.value for line in gone) == sum(held.value for held in here)
    transferred = [line.value for line in ledger.lines if line.kind in ("opened", "blended")]
    assert sum(transferred) == 0


@settings(max_examples=RUNS)
@given(st.integers(min_value=0, max_value=2**40))
def test_whatever_happens_the_book_says_what_the_rules_say(seed: int) -> None:
    run(seed)


def test_the_random_acts_cover_every_kind_of_act_and_refusals() -> None:
    done: Counter[str] = Counter()
    refusals = deepest = 0
    for seed in range(30):
        shop = run(seed)
        done.update(shop.acts)
        refusals += shop.refusals
        deepest = max(deepest, *(lot.depth for lot in shop.oracle.lots.values()))

    acts = {"receive", "issue", "take_back", "move", "move_back", "open", "put_back", "blend", "unblend", "charge"}
    assert set(done) == acts | {"count", "uncount"}
    assert min(done.values()) >= 40
    assert refusals >= 200
    assert deepest == DEEPEST
