"""Walks through run sheets: every exit, loops and their bounds."""

from __future__ import annotations

import pytest

from planning.contract.plan_input import CanalChoice, Choices
from planning.run_sheet.graph import Exit
from planning.run_sheet.walk import StepRefused, Walk
from planning.whole_tooth.plan import plan
from tests.planning.given import OPEN_30, block


def walk(final_size: int = 35) -> Walk:
    choices = Choices(needle=OPEN_30, canals=(CanalChoice(canal="single", final_size=final_size),))
    return Walk(plan(block(choices=choices)).canals[0].run_sheet)


def go(on: Walk, until: str, depths_mm: dict[str, float] | None = None) -> Walk:
    """Answers every step as hoped for, to-resistance steps by `depths_mm` (else at their stop), up to a step."""
    for _ in range(500):
        if on.at == until:
            return on
        node = on.node
        depth = (depths_mm or {}).get(on.at)
        exits = set(getattr(node, "exits", {}))
        if depth is not None:
            on.leave(Exit.SHORT, round(depth * 1000))
        elif on.at.startswith("first-binder/"):
            on.leave(Exit.SHORT, 16_000)
        else:
            on.leave(next(e for e in (Exit.DONE, Exit.APPROVED, Exit.REACHED) if e in exits))
    raise AssertionError(f"never came to {until}; stands at {on.at}")


PASS = {
    "coronal-flaring/25-10": 9.5,
    "coronal-flaring/25-08": 11.0,
    "descending/40-04": 13.5,
    "descending/35-04": 14.0,
    "descending/30-04": 15.0,
    "descending/25-04": 15.5,
}
DEEPER = {key: depth + 0.5 for key, depth in PASS.items()} | {"descending/25-04": 16.5}


def test_a_pass_that_gains_is_followed_by_another_from_coronal_flaring() -> None:
    on = go(walk(), "descending/25-04", PASS)
    on.leave(Exit.SHORT, 15_500)
    assert go(on, "coronal-flaring/25-10").passes["coronal-flaring/25-10"] == 2


def test_the_smallest_at_length_leads_up_to_the_next_size() -> None:
    on = go(walk(), "descending/25-04", PASS)
    on.leave(Exit.REACHED)
    assert "ascending/30-04" in go(on, "ascending/30-04").path


def test_a_larger_one_already_at_length_ends_the_descent() -> None:
    on = go(walk(), "descending/35-04", PASS)
    on.leave(Exit.REACHED)
    on = go(on, "confirm/35-02", PASS)
    assert "descending/30-04" not in on.path
    assert not any(step.startswith("ascending/") for step in on.path)


# Short of 16.5 at 16.0: the next larger makes room to 15.0, one millimetre short of where the smaller stopped.
def test_room_is_made_short_of_where_the_smaller_one_stopped() -> None:
    on = go(walk(), "descending/25-04", PASS)
    on.leave(Exit.REACHED)
    go(on, "ascending/30-04").leave(Exit.SHORT, 16_000)
    go(on, "ascending/30-04/make-room")
    assert on.stop_um() == 15_000
    on.leave(Exit.REACHED)
    go(on, "ascending/30-04").leave(Exit.REACHED)
    assert go(on, "ascending/35-04").passes["ascending/30-04/make-room"] == 1


def test_after_making_room_twice_the_supervisor_is_asked() -> None:
    on = go(walk(), "descending/25-04", PASS)
    on.leave(Exit.REACHED)
    for _ in range(3):
        go(on, "ascending/30-04").leave(Exit.SHORT, 16_000)
    assert go(on, "ascending/30-04/supervisor").passes["ascending/30-04/make-room"] == 2


# The check kit ends at 50: nothing larger makes room for it, so it does itself, as often.
def test_the_largest_of_the_kit_is_tried_again_and_then_the_supervisor_is_asked() -> None:
    on = go(walk(50), "descending/25-04", PASS)
    on.leave(Exit.REACHED)
    for _ in range(3):
        go(on, "ascending/50-04").leave(Exit.SHORT, 16_000)
    assert go(on, "ascending/50-04/supervisor").passes["ascending/50-04"] == 3


def test_two_passes_without_gain_go_to_the_supervisor() -> None:
    on = go(walk(), "descending/supervisor", PASS)
    assert on.passes["descending/25-04"] == 3
    assert on.passes["descending/no-gain"] == 1


# Compared instrument by instrument: 12.0/13.5/15.5/16.0 after 12.0/13.5/15.0/16.0 is a gain of exactly half a mm.
def test_half_a_millimetre_of_one_instrument_is_a_gain() -> None:
    on = go(walk(), "descending/25-04", PASS)
    on.leave(Exit.SHORT, 15_500)
    on = go(on, "descending/25-04", PASS | {"descending/30-04": 15.5})
    on.leave(Exit.SHORT, 15_500)
    go(on, "coronal-flaring/25-10", PASS)
    assert "descending/no-gain" not in on.passes


def test_a_small_file_that_will_not_pass_is_tried_and_then_shown_to_the_supervisor() -> None:
    on = go(walk(), "descending/35-04/recapitulate", PASS)
    on.leave(Exit.BLOCKED)
    for _ in range(4):
        go(on, "descending/blocked/try").leave(Exit.BLOCKED)
    assert on.at == "descending/blocked/image"
    go(on, "descending/blocked/sign-off").leave(Exit.APPROVED)
    assert on.ended


def test_a_canal_that_opens_again_is_worked_from_the_hand_sizes_on() -> None:
    on = go(walk(), "descending/35-04/recapitulate", PASS)
    on.leave(Exit.BLOCKED)
    go(on, "descending/blocked/try").leave(Exit.REACHED)
    on = go(on, "descending/40-04", PASS)
    assert on.path.index("descending/blocked/15-02") < on.path.index("descending/blocked/20-02")


def test_an_image_is_taken_again_three_times_at_most() -> None:
    on = walk()
    for _ in range(3):
        go(on, "length/sign-off").leave(Exit.RETURNED)
    assert on.ended
    assert on.passes["length/image"] == 3


def test_an_end_wider_than_planned_goes_to_the_supervisor() -> None:
    on = go(walk(), "confirm/larger", DEEPER)
    on.leave(Exit.REACHED)
    assert on.at == "confirm/wider"


def test_a_final_size_that_does_not_seat_is_tried_again_after_clearing() -> None:
    on = go(walk(), "confirm/35-02", DEEPER)
    on.leave(Exit.SHORT, 16_000)
    go(on, "confirm/35-02").leave(Exit.SHORT, 16_000)
    assert on.at == "confirm/short"


def test_a_depth_at_the_stop_or_beyond_counts_as_reached() -> None:
    on = go(walk(), "descending/25-04", PASS)
    on.leave(Exit.SHORT, 17_000)
    go(on, "ascending/30-04")
    assert on.depths_um["descending/25-04"] == [17_000]


def test_an_exit_the_step_does_not_have_is_refused() -> None:
    with pytest.raises(StepRefused, match="blocked"):
        walk().leave(Exit.BLOCKED)


def test_a_walk_to_the_end_finishes() -> None:
    on = go(walk(), "confirm/larger", DEEPER)
    on.leave(Exit.SHORT, 15_500)
    assert go(on, "finished").ended
