"""Instruments that flare to one stop, one after another: what has nothing left to cut is passed over."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import permutations

from planning.canal.profile import Stand, wider_mm
from planning.foundation.quantities import mm
from planning.instruments.iso_3630 import Instrument
from planning.run_sheet.graph import AtLength, Target
from planning.techniques.technique import Phase
from planning.work.form import CORONAL
from planning.work.sheet_builder import Nested, Sheet

APART_MM = 1e-9  # rounding error of doubles
MOST_KEPT = 256  # stops of a few kits


def flare(
    sheet: Sheet,
    phase: Phase,
    worked: Sequence[tuple[str, Instrument]],
    *,
    then: str,
    recapitulated: bool = True,
    say: str = "",
) -> str:
    """Adds a step for each (step, instrument), to resistance in the coronal third. Returns where the walk enters.

    An instrument is passed over once it, or one that is nowhere narrower, has stood at the stop: it would cut nothing.
    """
    # Before every instrument the walk asks of it, and of each earlier one that is nowhere narrower, whether it last
    # stood at the stop. The hand's record decides, not the estimate.
    asks = [
        [
            (f"{step}/after-{before.rpartition('/')[2]}", before)
            for before, larger in worked[: number + 1]
            if instrument == larger or (instrument.key, larger.key) in sheet.asked.nested
        ]
        for number, (step, instrument) in enumerate(worked)
    ]
    # The walk comes to an instrument by its first question and never directly. There always is one, as it lies within
    # itself.
    entries = [questions[0][0] for questions in asks]
    for (step, instrument), questions, following in zip(worked, asks, [*entries[1:], then], strict=True):
        for (id_, before), no in zip(questions, [*(id_ for id_, _ in questions[1:]), step], strict=True):
            sheet.ask(phase, id_, AtLength(nodes=(before,)), yes=following, no=no)
        sheet.cut(
            phase,
            instrument,
            id_=step,
            stop=CORONAL,
            target=Target.TO_RESISTANCE,
            then=following,
            recapitulated=recapitulated,
            say=say,
        )
    return entries[0]


@lru_cache(maxsize=MOST_KEPT)
def nested(instruments: tuple[Instrument, ...], stop_um: int) -> Nested:
    """Which of them are nowhere wider than which others, with both at the stop."""
    lines = {each.key: Stand(instrument=each, tip_mm=mm(stop_um)).line(0.0) for each in instruments}
    return frozenset(
        (mine, its)
        for mine, its in permutations(lines, 2)
        if lines[its] and wider_mm(lines[mine], lines[its]) <= APART_MM
    )
