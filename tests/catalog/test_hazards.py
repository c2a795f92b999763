"""Hazard codes and the words of the label beside them."""

import pytest

from inventory.catalog.hazards import STATEMENTS, is_hazard_code, statement_of

SEEN_ON_SUCH_GOODS = [
    "H222",
    "H225",
    "H226",
    "H228",
    "H229",
    "H302",
    "H314",
    "H315",
    "H317",
    "H318",
    "H319",
    "H334",
    "H336",
    "H410",
    "H411",
    "H412",
]


@pytest.mark.parametrize("code", [*SEEN_ON_SUCH_GOODS, "H300", "H360FD", "H350i", "EUH066", "EUH209A"])
def test_the_codes_of_labels_are_taken(code):
    assert is_hazard_code(code)


@pytest.mark.parametrize("code", ["", "h317", "H17", "H3170", "H517", "P280", "EUH20", "H300+H310", "H317 ", "H317\n"])
def test_nothing_else_is(code):
    assert not is_hazard_code(code)


def test_each_code_of_such_goods_has_its_own_words():
    words = [statement_of(code) for code in SEEN_ON_SUCH_GOODS]

    assert len(set(words)) == len(SEEN_ON_SUCH_GOODS) == len(STATEMENTS)
    assert statement_of("H317") == "May cause an allergic skin reaction."
    assert statement_of("H300") == "See section 2 of the safety data sheet."
