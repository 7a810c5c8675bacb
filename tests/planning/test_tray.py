"""The order at the tray: hold points, canals that do not share, changes counted by hand."""

from __future__ import annotations

from planning.tray import TrayRun, one_at_a_time, shared


def run(canal: str, *sections: str, shares: bool = True) -> TrayRun:
    return TrayRun(
        canal=canal, sections=tuple(tuple(("phase", letter) for letter in s) for s in sections), shares=shares
    )


def test_hold_points_are_barriers() -> None:
    runs = (run("MB", "ab", "c"), run("DB", "b", "ac"))
    order = shared(runs)
    assert [(s.instrument, s.canals) for s in order.steps] == [
        ("a", ("MB",)),
        ("b", ("MB", "DB")),
        ("a", ("DB",)),
        ("c", ("MB", "DB")),
    ]
    assert order.changes == 4
    assert one_at_a_time(runs).changes == 6


def test_a_canal_that_does_not_share_is_served_on_its_own() -> None:
    order = shared((run("MB", "ab"), run("P", "ab"), run("DB", "ab", shares=False)))
    assert [s.canals for s in order.steps] == [("MB", "P"), ("MB", "P"), ("DB",), ("DB",)]


def test_all_come_to_a_hold_point_before_any_goes_on_though_one_at_a_time_takes_fewer_changes() -> None:
    runs = (run("MB", "a", "a"), run("DB", "b", "b", shares=False))
    order = shared(runs)
    assert [(s.instrument, *s.canals) for s in order.steps] == [("a", "MB"), ("b", "DB"), ("a", "MB"), ("b", "DB")]
    assert (order.changes, one_at_a_time(runs).changes) == (4, 2)


def test_an_instrument_that_stays_in_the_hand_is_one_change() -> None:
    assert one_at_a_time((run("MB", "a"), run("DB", "ab"))).changes == 2
