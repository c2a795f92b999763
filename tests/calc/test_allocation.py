"""Which lots a pour takes from: invariant for invariant, both ways."""

from __future__ import annotations

import random
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventory.calc.allocation import (
    TOLERANCE,
    Candidate,
    Choice,
    Pick,
    choose_lots,
    days_after,
    is_enough,
    is_usable_on,
    taken_from,
    use_by,
)

UNIT = 1_000_000
SPRING, SUMMER, AUTUMN = date(2026, 3, 1), date(2026, 6, 1), date(2026, 9, 1)


def lot(
    number: int,
    takeable: int = 10,
    use_by: date | None = SUMMER,
    received_on: date = SPRING,
    is_open: bool = False,
    is_used_by_job: bool = False,
) -> Candidate:
    return Candidate(number, takeable * UNIT, use_by, received_on, is_open, is_used_by_job)


def lots_of(choice: Choice) -> list[int]:
    return [pick.lot for pick in choice.picks]


def test_the_earliest_use_by_goes_first() -> None:
    shelf = [lot(1, use_by=AUTUMN), lot(2, use_by=SUMMER)]
    assert lots_of(choose_lots(shelf, wanted=UNIT)) == [2]


def test_of_the_same_use_by_an_open_container_goes_before_a_full_one() -> None:
    shelf = [lot(1, received_on=SPRING), lot(2, received_on=SUMMER, is_open=True)]
    assert lots_of(choose_lots(shelf, wanted=UNIT)) == [2]


def test_an_open_container_does_not_overtake_an_earlier_use_by() -> None:
    shelf = [lot(1, use_by=AUTUMN, is_open=True), lot(2, use_by=SUMMER)]
    assert lots_of(choose_lots(shelf, wanted=UNIT)) == [2]


def test_a_lot_that_does_not_age_waits_for_those_that_do() -> None:
    shelf = [lot(1, use_by=None, received_on=SPRING), lot(2, use_by=date.max, received_on=AUTUMN)]
    assert lots_of(choose_lots(shelf, wanted=UNIT)) == [2]


def test_without_a_use_by_the_lot_received_first_goes_first() -> None:
    shelf = [lot(1, use_by=None, received_on=SUMMER), lot(2, use_by=None, received_on=SPRING)]
    assert lots_of(choose_lots(shelf, wanted=UNIT)) == [2]


def test_of_lots_alike_in_everything_the_lower_number_goes_first() -> None:
    assert lots_of(choose_lots([lot(2), lot(1), lot(3)], wanted=UNIT)) == [1]


def test_a_pour_empties_the_first_lot_before_it_touches_the_next() -> None:
    shelf = [lot(1, 3, use_by=AUTUMN), lot(2, 3, use_by=SUMMER)]
    assert choose_lots(shelf, wanted=4 * UNIT) == Choice((Pick(2, 3 * UNIT), Pick(1, UNIT)), missing=0)


def test_what_no_lot_can_give_is_missing() -> None:
    assert choose_lots([lot(1, 3)], wanted=5 * UNIT) == Choice((Pick(1, 3 * UNIT),), missing=2 * UNIT)
    assert choose_lots([], wanted=5) == Choice((), missing=5)
    assert choose_lots([lot(1, 0)], wanted=5) == Choice((), missing=5)


def test_a_colour_matched_material_keeps_to_the_lot_that_the_job_used() -> None:
    shelf = [lot(1, 50, use_by=SPRING), lot(2, 2, use_by=AUTUMN, is_used_by_job=True)]
    assert lots_of(choose_lots(shelf, wanted=UNIT, keeps_to_one_lot=True)) == [2]
    assert lots_of(choose_lots(shelf, wanted=UNIT)) == [1]


def test_a_colour_matched_material_prefers_a_lot_that_can_serve_the_whole_job() -> None:
    shelf = [lot(1, 4, use_by=SUMMER), lot(2, 9, use_by=AUTUMN)]
    assert lots_of(choose_lots(shelf, wanted=3 * UNIT, keeps_to_one_lot=True, whole_job_needs=9 * UNIT)) == [2]
    assert lots_of(choose_lots(shelf, wanted=3 * UNIT, keeps_to_one_lot=True)) == [1]
    assert lots_of(choose_lots(shelf, wanted=3 * UNIT, whole_job_needs=9 * UNIT)) == [1]


def test_where_no_lot_can_serve_the_whole_job_the_earliest_use_by_goes_first() -> None:
    shelf = [lot(1, 4, use_by=SUMMER), lot(2, 8, use_by=AUTUMN)]
    assert lots_of(choose_lots(shelf, wanted=3 * UNIT, keeps_to_one_lot=True, whole_job_needs=9 * UNIT)) == [1]


def test_a_lot_serves_the_whole_job_within_the_tolerance() -> None:
    shelf = [lot(1, 4, use_by=SUMMER), lot(2, 9, use_by=AUTUMN)]
    needs = 9 * UNIT + TOLERANCE
    assert lots_of(choose_lots(shelf, wanted=UNIT, keeps_to_one_lot=True, whole_job_needs=needs)) == [2]
    assert lots_of(choose_lots(shelf, wanted=UNIT, keeps_to_one_lot=True, whole_job_needs=needs + 1)) == [1]


@pytest.mark.parametrize(
    ("wanted", "taken", "missing"),
    [
        (3 * UNIT - TOLERANCE - 1, 3 * UNIT - TOLERANCE - 1, 0),
        (3 * UNIT - TOLERANCE, 3 * UNIT, 0),
        (3 * UNIT + TOLERANCE, 3 * UNIT, 0),
        (3 * UNIT + TOLERANCE + 1, 3 * UNIT, TOLERANCE + 1),
    ],
)
def test_nothing_unweighable_is_left_in_a_lot_or_missed(wanted: int, taken: int, missing: int) -> None:
    assert choose_lots([lot(1, 3)], wanted=wanted) == Choice((Pick(1, taken),), missing)


def test_no_second_lot_is_opened_for_less_than_the_tolerance() -> None:
    shelf = [lot(1, 3, use_by=SUMMER), lot(2, 3, use_by=AUTUMN)]
    assert lots_of(choose_lots(shelf, wanted=3 * UNIT + TOLERANCE)) == [1]
    assert lots_of(choose_lots(shelf, wanted=3 * UNIT + TOLERANCE + 1)) == [1, 2]


def test_128_fluid_ounces_empty_a_gallon_and_three_thirds_a_can() -> None:
    gallon = 3_785_411_784  # millionths of a mL
    for _ in range(128):
        gallon -= taken_from(gallon, wanted=29_573_530)
    assert gallon == 0
    can = UNIT
    for _ in range(3):
        can -= taken_from(can, wanted=333_333)
    assert can == 0


@pytest.mark.parametrize("wanted", [0, -1])
def test_a_pour_of_nothing_is_refused(wanted: int) -> None:
    with pytest.raises(ValueError, match="more than 0"):
        choose_lots([lot(1)], wanted=wanted)


def test_a_lot_given_twice_is_refused() -> None:
    with pytest.raises(ValueError, match="only once"):
        choose_lots([lot(1), lot(1)], wanted=1)


shelves = st.lists(
    st.builds(
        Candidate,
        lot=st.integers(1, 10**6),
        takeable=st.one_of(st.integers(0, 3 * TOLERANCE), st.integers(0, 10**13)),
        use_by=st.none() | st.dates(SPRING, SPRING + timedelta(days=3)),
        received_on=st.dates(SPRING, SPRING + timedelta(days=3)),
        is_open=st.booleans(),
        is_used_by_job=st.booleans(),
    ),
    max_size=8,
    unique_by=lambda candidate: candidate.lot,
)
amounts = st.one_of(st.integers(1, 9 * TOLERANCE), st.integers(1, 10**13))


@given(shelves, amounts, st.booleans(), st.none() | amounts, st.randoms(use_true_random=False))
def test_the_choice_does_not_depend_on_the_order_of_the_shelf(
    shelf: list[Candidate], wanted: int, one_lot: bool, needs: int | None, chance: random.Random
) -> None:
    shuffled = chance.sample(shelf, len(shelf))
    choices = [
        choose_lots(s, wanted=wanted, keeps_to_one_lot=one_lot, whole_job_needs=needs) for s in (shelf, shuffled)
    ]
    assert choices[0] == choices[1]


@given(shelves, amounts, st.booleans(), st.none() | amounts)
def test_a_choice_never_takes_more_than_is_there_and_accounts_for_all_that_was_asked(
    shelf: list[Candidate], wanted: int, one_lot: bool, needs: int | None
) -> None:
    choice = choose_lots(shelf, wanted=wanted, keeps_to_one_lot=one_lot, whole_job_needs=needs)
    takeable = {candidate.lot: candidate.takeable for candidate in shelf}
    taken = sum(pick.quantity for pick in choice.picks)

    assert all(0 < pick.quantity <= takeable[pick.lot] for pick in choice.picks)
    assert all(pick.quantity == takeable[pick.lot] for pick in choice.picks[:-1])
    assert len({pick.lot for pick in choice.picks}) == len(choice.picks)
    if choice.missing:
        assert choice.missing > TOLERANCE or not any(takeable.values())
        assert taken == sum(takeable.values())
        assert taken + choice.missing == wanted
    else:
        assert abs(taken - wanted) <= TOLERANCE
        last = choice.picks[-1]
        left = takeable[last.lot] - last.quantity
        assert left == 0 or left > TOLERANCE
        assert left == 0 or taken == wanted


@given(shelves, amounts)
def test_no_lot_passed_over_was_due_before_one_that_was_taken(shelf: list[Candidate], wanted: int) -> None:
    by_number = {candidate.lot: candidate for candidate in shelf}
    taken = [by_number[pick.lot] for pick in choose_lots(shelf, wanted=wanted).picks]
    passed_over = [candidate for candidate in shelf if candidate.takeable and candidate not in taken]
    for passed in passed_over:
        for chosen in taken:
            assert chosen.use_by is not None or passed.use_by is None
            if passed.use_by is not None and chosen.use_by is not None:
                assert chosen.use_by <= passed.use_by


@given(st.integers(0, 10**13), st.integers(1, 10**13))
def test_what_is_enough_is_taken_whole_or_as_asked(there: int, wanted: int) -> None:
    taken = taken_from(there, wanted=wanted)
    assert 0 <= taken <= there
    assert is_enough(there, wanted=wanted) == (wanted - taken <= TOLERANCE)


def test_the_use_by_is_the_last_good_day() -> None:
    assert is_usable_on(SUMMER, SUMMER)
    assert not is_usable_on(SUMMER, SUMMER + timedelta(days=1))
    assert is_usable_on(None, date.max)


def test_an_opened_container_keeps_for_its_opened_life_and_never_past_its_expiry() -> None:
    assert use_by(expires_on=AUTUMN, opened_on=None, open_life_days=30) == AUTUMN
    assert use_by(expires_on=AUTUMN, opened_on=SPRING, open_life_days=30) == date(2026, 3, 31)
    assert use_by(expires_on=AUTUMN, opened_on=SPRING, open_life_days=300) == AUTUMN
    assert use_by(expires_on=None, opened_on=SPRING, open_life_days=0) == SPRING
    assert use_by(expires_on=None, opened_on=SPRING, open_life_days=None) is None


def test_a_shelf_life_beyond_the_calendar_ends_on_its_last_day() -> None:
    assert days_after(SPRING, 31) == date(2026, 4, 1)
    assert days_after(SPRING, 10**12) == date.max
