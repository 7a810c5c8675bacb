"""What is done when the first instrument is held on its way: smaller ones, more room above, once more, the supervisor.

Nothing is tried twice unless something has changed in between, and there is no loop: every way through it ends.
"""

from __future__ import annotations

from collections.abc import Sequence

from planning.instruments.iso_3630 import Instrument, size_above, sizes
from planning.run_sheet.graph import AtLength, Target
from planning.techniques.technique import Phase
from planning.work.flaring import flare
from planning.work.form import AT_END
from planning.work.sheet_builder import PLAN_AGAIN, Sheet, step_name

SMALLER = 2  # ISO sizes below the one that is held


def answer_held(sheet: Sheet, phase: Phase, instrument: Instrument, start: str, then: str) -> str:
    """Adds what follows where the instrument does not go to its stop at the step `start`. Returns the first step."""
    # Written from the end backwards, as every step has to name the one that it leads to.
    supervisor = f"{start}/supervisor"
    say = f"{instrument.name} does not go to its stop: do not push; the supervisor decides."
    sheet.sign_off(phase, supervisor, "short of length", then=PLAN_AGAIN, returned=PLAN_AGAIN, say=say)
    smaller, lacking = _smaller(sheet, instrument)
    last = _tried(sheet, phase, instrument, f"{start}/last", then, supervisor, say="Once more; do not push.")
    # With no smaller size in the kit the held one is tried again at once; where nothing may widen the coronal third,
    # the supervisor comes next.
    room = (
        _room(sheet, phase, instrument, start, then=f"{start}/went" if smaller else last, lacking=lacking) or supervisor
    )
    if not smaller:
        return room
    first = f"{start}/{step_name(smaller[0])}"
    after = _tried(sheet, phase, smaller[0], f"{first}/last", last, supervisor, say="Once more, now with room above.")
    # A smaller size that went before need not go again; one that was held has to go first, now that there is room.
    sheet.ask(phase, f"{start}/went", AtLength(nodes=(first,)), yes=last, no=after)
    again = _tried(sheet, phase, instrument, f"{start}/again", then, room, say="The smaller one went: once more.")
    held = room
    if len(smaller) == SMALLER:
        held = _tried(sheet, phase, smaller[1], f"{start}/{step_name(smaller[1])}", room, room, say=_says(smaller[1]))
    return _tried(sheet, phase, smaller[0], first, again, held, say=_says(smaller[0]))


def _says(instrument: Instrument) -> str:
    return f"Held: size {instrument.size:02d}, without a push."


def _smaller(sheet: Sheet, instrument: Instrument) -> tuple[list[Instrument], list[int]]:
    """The next sizes below, larger first: those that the kit has, and those that it has not."""
    wanted = [size for size in reversed(sizes()) if size < instrument.size][:SMALLER]
    hand = sheet.selection.hand
    return [hand[size] for size in wanted if size in hand], [size for size in wanted if size not in hand]


def _tried(sheet: Sheet, phase: Phase, instrument: Instrument, id_: str, at_length: str, held: str, *, say: str) -> str:
    """Adds one try of an instrument, and where it leads: at length to `at_length`, else to `held`."""
    question = f"{id_}/at-length"
    sheet.cut(
        phase, instrument, id_=id_, stop=AT_END, target=Target.TO_LENGTH, then=question, recapitulated=False, say=say
    )
    sheet.ask(phase, question, AtLength(nodes=(id_,)), yes=at_length, no=held)
    return id_


def _room(
    sheet: Sheet, phase: Phase, instrument: Instrument, start: str, *, then: str, lacking: Sequence[int]
) -> str | None:
    """Adds steps that widen the coronal third further; None where that is not allowed or the kit has no instrument."""
    flaring = (sheet.selection.coronal or _by_hand(sheet, instrument)) if sheet.asked.may_widen else ()
    worked = [(f"{start}/room/{step_name(each)}", each) for each in flaring]
    say = "Held: more room in the coronal third, to resistance."
    if lacking:
        say = f"The kit has no size {' and no size '.join(f'{size:02d}' for size in lacking)}. {say}"
    # The small instrument is the one that is held: there is nothing to recapitulate with yet.
    return flare(sheet, phase, worked, then=then, recapitulated=False, say=say) if worked else None


def _by_hand(sheet: Sheet, instrument: Instrument) -> list[Instrument]:
    """A technique without coronal instruments widens by the next hand sizes, smallest first."""
    steps = range(1, sheet.figures.count("explore.flare_sizes") + 1)
    return [
        sheet.selection.hand[size]
        for step in steps
        if (size := size_above(instrument.size, step)) in sheet.selection.hand
    ]
