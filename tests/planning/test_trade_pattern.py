"""What the trade sees in a straight practice canal, and for which parameters the estimate shows it.

Check values, common practice, no source: 17 mm and 0.15/.02, hand 10-15-20 to length, then 25/.10, 25/.08 and a
series of .04 from 40 to 25 to resistance, pass after pass, then up to 30.
"""

from __future__ import annotations

from itertools import pairwise

import pytest

from planning.canal.profile import Line
from planning.depth.contact_depth import LightTouch, insert, light_touch, stand
from planning.foundation.tables import Figures
from tests.planning.given import CHECK_KIT, hand, rotary

END_MM = 17.0
DEFAULT = light_touch(Figures())
CORONAL = [instrument for instrument in CHECK_KIT.instruments if instrument.use == "coronal"]
SERIES = [rotary(size, 4) for size in (40, 35, 30, 25)]


def worked(by: LightTouch) -> tuple[list[list[float]], Line]:
    """Depths pass by pass until one of the series is at length, three passes at most; and the canal then."""
    canal: Line = ((0.0, 0.15 + 0.02 * END_MM), (END_MM, 0.15))
    for size in (10, 15, 20):
        canal = stand(hand(size), canal, END_MM, by).canal
    passes: list[list[float]] = []
    while len(passes) < 3 and not (passes and passes[-1][-1] == END_MM):
        passes.append([])
        for instrument in (*CORONAL, *SERIES):
            done = insert(instrument, canal, END_MM, by)
            canal = done.canal
            passes[-1].append(done.depth_mm)
            if done.depth_mm == END_MM:
                break
    return passes, canal


def shows_the_pattern(by: LightTouch) -> bool:
    """Deeper with every instrument, none at length in the first pass, length reached by the second or third."""
    passes, _ = worked(by)
    deeper = all(b > a for depths in passes for a, b in pairwise(depths))
    return deeper and passes[0][-1] < END_MM and len(passes) in (2, 3) and passes[-1][-1] == END_MM


def test_the_defaults_show_the_pattern() -> None:
    passes, _ = worked(DEFAULT)
    assert shows_the_pattern(DEFAULT)
    assert [len(depths) for depths in passes] == [6, 6]


# As found, not asked for: the first of the series stops 8.3 mm short in the first pass, and 30/.04 stays half a
# millimetre short of length until 35/.04 has made room one millimetre further up.
def test_what_the_defaults_say_beyond_the_pattern() -> None:
    passes, canal = worked(DEFAULT)
    assert END_MM - passes[0][2] == pytest.approx(8.3, abs=0.05)
    tried = insert(rotary(30, 4), canal, END_MM, DEFAULT)
    assert tried.depth_mm == pytest.approx(16.5, abs=0.01)
    room = insert(rotary(35, 4), tried.canal, tried.depth_mm - 1.0, DEFAULT)
    assert insert(rotary(30, 4), room.canal, END_MM, DEFAULT).depth_mm == END_MM


# The ranges that figures.csv states beside the defaults, one parameter at a time.
@pytest.mark.parametrize(
    ("name", "inside", "outside"),
    [
        ("limit_mm2", [n / 100 for n in range(3, 24)], [0.25]),
        ("overcut_mm", [n / 1000 for n in range(9, 25)], [0.008, 0.025]),
        ("strokes", [2, 3], [1, 4]),
    ],
)
def test_the_pattern_holds_over_the_stated_ranges(name: str, inside: list[float], outside: list[float]) -> None:
    def with_(value: float) -> LightTouch:
        fields = {"limit_mm2": DEFAULT.limit_mm2, "overcut_mm": DEFAULT.overcut_mm, "strokes": DEFAULT.strokes}
        return LightTouch(**(fields | {name: value}))  # type: ignore[arg-type]

    assert [value for value in inside if not shows_the_pattern(with_(value))] == []
    assert [value for value in outside if shows_the_pattern(with_(value))] == []
