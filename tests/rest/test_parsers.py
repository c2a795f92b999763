"""What JSON may arrive, and where it is refused."""

import io
import json
from decimal import Decimal

import pytest
from django.test import override_settings
from hypothesis import given
from hypothesis import strategies as st

from inventory.rest.parsers import MAX_DEPTH, BoundedJSONParser, parse_json
from inventory.rest.problems import BadJSON, TooLarge


def test_fractions_are_decimals_and_whole_numbers_are_whole():
    assert parse_json('{"a": 0.10, "b": 3, "c": 1e2}') == {"a": Decimal("0.10"), "b": 3, "c": Decimal("1E+2")}
    assert isinstance(parse_json("3"), int)


@pytest.mark.parametrize("bracket", ["[]", ["{", "}"]])
def test_thirty_two_levels_are_read_and_one_more_is_not(bracket):
    opening, closing = bracket
    inner = '"a":' if opening == "{" else ""
    deepest = (opening + inner) * (MAX_DEPTH - 1) + opening + closing + closing * (MAX_DEPTH - 1)
    parse_json(deepest)
    with pytest.raises(BadJSON, match="deeper than 32"):
        parse_json(opening + inner + deepest + closing)


def test_brackets_inside_text_are_no_levels():
    text = json.dumps({"note": "[" * 500 + '\\"{' * 500})
    assert parse_json(text) == json.loads(text)


@pytest.mark.parametrize("text", ["[" * 200_000, '{"a":' * 200_000, '"' + '\\"' * 400_000, '"\\', '["' * 200_000])
def test_a_hostile_body_is_refused_quickly(text):
    with pytest.raises(BadJSON):
        parse_json(text)


@pytest.mark.parametrize("number", ["NaN", "Infinity", "-Infinity", "1e999999", "1e-999999", "9" * 41, "0." + "1" * 90])
def test_a_number_out_of_bounds_is_refused(number):
    with pytest.raises(BadJSON):
        parse_json(f'{{"quantity": {number}}}')


def test_a_long_number_within_bounds_is_exact():
    assert parse_json("9999999.999999") == Decimal("9999999.999999")
    assert parse_json("9" * 40) == int("9" * 40)


@pytest.mark.parametrize("escape", [r"\u0000", r"\ud800", r"\uDFFF", r"\udc00\ud800"])
def test_text_that_cannot_be_stored_is_refused_with_a_pointer(escape):
    with pytest.raises(BadJSON) as refusal:
        parse_json(f'{{"lines": [{{"note": "a{escape}"}}]}}')
    assert [error["pointer"] for error in refusal.value.errors] == ["/lines/0/note"]
    with pytest.raises(BadJSON):
        parse_json(f'{{"a{escape}": 1}}')


def test_whole_surrogate_pairs_and_escaped_backslashes_are_text():
    assert parse_json(r'"\ud83e\uddea"') == "🧪"
    assert parse_json(r'"\\u0000"') == r"\u0000"


def test_broken_json_says_where():
    with pytest.raises(BadJSON, match="line 2, column 1"):
        parse_json('{"a": 1,\n}')


def test_a_body_that_is_not_utf8_or_too_long_is_refused():
    with pytest.raises(BadJSON, match="not UTF-8"):
        BoundedJSONParser().parse(io.BytesIO(b'"\xff"'))
    with override_settings(DATA_UPLOAD_MAX_MEMORY_SIZE=10), pytest.raises(TooLarge):
        BoundedJSONParser().parse(io.BytesIO(b'"0123456789"'))


TEXT = st.text(st.characters(exclude_characters="\0", exclude_categories=["Cs"]))
LEAVES = st.none() | st.booleans() | st.integers(-(10**30), 10**30) | TEXT


@given(st.recursive(LEAVES, lambda inner: st.lists(inner) | st.dictionaries(TEXT, inner), max_leaves=20))
def test_what_python_writes_is_read_back(value):
    assert parse_json(json.dumps(value)) == value


@given(st.text(alphabet='[]{}",:\\u0d8eE.+-1 anI', max_size=60))
def test_any_text_is_read_or_refused_and_nothing_else(text):
    try:
        parse_json(text)
    except BadJSON:
        return
    json.loads(text)
