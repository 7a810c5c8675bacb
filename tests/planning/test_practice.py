"""Practice: the same acts give the same canal, and each mistake has the consequence that the model gives it."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from itertools import pairwise

import pytest

from planning.practice.exercise import Act, ActKind, ActRefused, Exercise, StepDue
from planning.practice.levels import UnknownLevel, levels
from planning.run_sheet.graph import Action
from tests.draws import draws

WORK, SKIP = Act(kind=ActKind.WORK), Act(kind=ActKind.SKIP)
CURVED = "curved-canal"
Hand = Callable[[StepDue], Act]


def worked(level: str, seed: int, hand: Hand = lambda _: WORK) -> Exercise:
    """An exercise worked to its end by a hand that looks at the step that is due."""
    course = Exercise.begun(level, seed)
    while course.due is not None:
        course.act(hand(course.due))
    return course


def engine(due: StepDue) -> bool:
    return due.action is Action.INSTRUMENT and not due.instrument.endswith("hand")


def codes(course: Exercise) -> set[str]:
    return {mistake.code for done in course.done for mistake in done.mistakes}


@pytest.mark.parametrize("level", [level.key for level in levels()])
def test_the_same_seed_and_acts_give_the_same_states_to_the_byte(level: str) -> None:
    course = worked(level, 3)
    again = Exercise.after(level, 3, [done.act for done in course.done])
    assert repr((again.done, again.worked)) == repr((course.done, course.worked))
    assert not codes(course)
    assert course.worked != worked(level, 4).worked


def test_four_fifths_of_hidden_canals_stop_the_first_instrument_in_its_band() -> None:
    """Judged by the binomial distribution: five standard deviations to either side."""
    count = draws(400)
    inside = 0
    for seed in range(count):
        course = Exercise.begun("straight-block", seed)
        done = course.act(WORK)
        while not done.judged:
            done = course.act(WORK)
        inside += (done.low_mm or 0.0) <= (done.depth_mm or 0.0) <= (done.high_mm or 0.0)
    share = 0.8
    # The plan's bands are of readings, which spread a little more than where instruments stop, and of 200 samples.
    assert abs(inside - share * count) < 5 * math.sqrt(count * share * (1 - share))


def test_a_push_past_resistance_in_the_curve_leaves_a_ledge_that_stops_what_follows() -> None:
    for seed in range(20):
        course = worked(CURVED, seed, lambda due: Act(kind=ActKind.WORK, force=engine(due)))
        at_mm = course.worked[0].ledge_mm
        if at_mm is None:
            continue
        first = next(n for n, done in enumerate(course.done) if "forced-ledge" in {m.code for m in done.mistakes})
        later = [done for done in course.done[first + 1 :] if engine_done(done.instrument) and done.depth_mm]
        assert later
        assert max(done.depth_mm or 0.0 for done in later) <= at_mm + 0.001
        return
    pytest.fail("no push met resistance in the curve")


def engine_done(instrument: str) -> bool:
    return not instrument.endswith("hand")


def test_dust_that_is_left_blocks_the_canal_until_the_small_file_opens_it() -> None:
    lazy = worked("straight-block", 1, lambda due: SKIP if due.action is Action.RECAPITULATE else WORK)
    assert "blocked" in codes(lazy)
    blocked = next(n for n, done in enumerate(lazy.done) if "blocked" in {m.code for m in done.mistakes})
    acts: Sequence[Act] = [done.act for done in lazy.done[: blocked + 1]]
    course = Exercise.after("straight-block", 1, acts)
    block_mm = course.worked[0].block_mm
    assert block_mm is not None
    while course.due is not None and course.worked[0].block_mm is not None:
        done = course.act(WORK)
        assert (done.depth_mm or 0.0) <= done.stop_mm
    assert course.worked[0].block_mm is None


def test_a_stop_past_the_end_widens_it_by_the_taper_as_iso_3630_has_it() -> None:
    """By hand: taper .02 is 0.02 mm wider 1 mm above the tip, within the 5 % that it may be off."""
    course = Exercise.begun("straight-block", 1)
    while course.due is not None and course.due.instrument != "20/.02 hand":
        course.act(WORK)
    done = course.act(Act(kind=ActKind.WORK, past_mm=1.0))
    assert [mistake.code for mistake in done.mistakes] == ["past-end"]
    assert course.worked[0].over_wide_mm == pytest.approx(0.02, rel=0.05)


def test_the_next_instrument_stops_no_deeper_where_a_size_was_left_out() -> None:
    first = worked("straight-block", 1)
    at = next(n for n, (done, after) in enumerate(pairwise(first.done)) if done.judged and after.judged is False)
    acts = [done.act for done in first.done]
    skipped = Exercise.after("straight-block", 1, [*acts[:at], SKIP])
    assert "size-skipped" in codes(skipped)
    whole = next(done for done in first.done[at + 1 :] if done.judged)
    done = skipped.act(WORK)
    while not done.judged:
        done = skipped.act(WORK)
    assert done.node == whole.node
    assert (done.depth_mm or 0.0) <= (whole.depth_mm or 0.0)


def test_what_cannot_be_done_is_refused() -> None:
    with pytest.raises(UnknownLevel):
        Exercise.begun("nowhere", 1)
    course = Exercise.begun("straight-block", 1)
    with pytest.raises(ActRefused, match="not laid out"):
        course.act(Act(kind=ActKind.INSERT, instrument="99/.99"))
    with pytest.raises(ActRefused, match="so far past"):
        course.act(Act(kind=ActKind.WORK, past_mm=9.0))
    over = worked("straight-block", 1)
    with pytest.raises(ActRefused, match="are worked"):
        over.act(WORK)
