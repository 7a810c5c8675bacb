"""Where an order of work starts once some of it has been done: what is done is left out, what is withheld stays so."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace

from planning.contract.plan_input import Begun, Made
from planning.foundation.quantities import said
from planning.run_sheet.graph import Action, Behind, Do, End, Exit, RunSheet
from planning.run_sheet.walk import Left, Walk
from planning.techniques.technique import Phase, PhaseKind
from planning.work import sheet_builder
from planning.work.sheet_builder import Sheet

LENGTH_MOVED = "length-moved/sign-off"
"""The word on a length that was taken again after it had been signed off."""


@dataclass(frozen=True, slots=True)
class _Start:
    place: str
    """A step or the place of one, as `run_sheet.finish` takes it."""
    anew: Collection[str] = ()
    """The phases that are taken up anew: what they had counted does not count any more."""


def begun_by(walk: Walk, *, length_mm: float | None, before: Begun | None = None, made: tuple[Made, ...] = ()) -> Begun:
    """Where the work stands on a walk by the working length `length_mm`; `before` is what its sheet began with."""
    behind = Behind(visits=dict(walk.visits), depths_um={step: tuple(each) for step, each in walk.depths_um.items()})
    last = walk.sheet.nodes[walk.left[-1].node] if walk.left else None
    due = walk.node if isinstance(walk.node, Do) else last
    if isinstance(due, Do) and due.id == LENGTH_MOVED and walk.node.id != due.exits[Exit.APPROVED]:
        # The word on the length is still due, and after it the step that was come to before.
        at = due.exits[Exit.APPROVED]
        behind = replace(behind, visits={**behind.visits, at: behind.visits.get(at, 0) + 1})
        return Begun(at=at, phase=due.phase, behind=behind, length_mm=None, made=made)
    if isinstance(walk.node, Do):
        return Begun(at=walk.at, phase=walk.node.phase, behind=behind, length_mm=length_mm, made=made)
    if isinstance(last, Do):
        over = last.action is not Action.SIGN_OFF or _ends_phase(last, walk.left[-1])
        return Begun(at=walk.at, phase=last.phase, over=over, behind=behind, length_mm=length_mm, made=made)
    if before is not None:
        return replace(before, behind=behind, made=made)
    return Begun(at=walk.at, phase="", behind=behind, length_mm=length_mm, made=made)


def _ends_phase(last: Do, word: Left) -> bool:
    """Any other word sends the phase back to planning."""
    return (word.node, word.exit) == (f"{last.phase}/sign-off", Exit.APPROVED)


def finish(
    sheet: Sheet,
    every: Sequence[Phase],
    open_phases: Sequence[Phase],
    last: End,
    begun: Begun,
    length_mm: float | None,
) -> RunSheet:
    """The order of work from where it stands; `every` are the open phases and those that are withheld.

    A length that moved is signed off before anything else. Where it grew, nothing larger has been to the new end:
    the hand instruments go there first. Raises TechniqueNotUsable.
    """
    start = _where_it_stands(sheet, every, open_phases, last, begun)
    if length_mm is not None and begun.length_mm is not None and length_mm > begun.length_mm:
        start = _to_the_new_end(open_phases, begun) or start
    place = start.place
    if place != sheet_builder.PLAN_AGAIN and length_mm != begun.length_mm and _signed_before(every, begun):
        phase = next(one for one in every if one.key == begun.phase)
        say = f"The length was taken again: all stops are set from {said(sheet.work.full_um)} mm now."
        place = sheet.sign_off(phase, LENGTH_MOVED, "length", then=place, returned=sheet_builder.PLAN_AGAIN, say=say)
    return sheet_builder.finish(sheet, open_phases, last, start=place, behind=_behind(begun.behind, start))


def _where_it_stands(
    sheet: Sheet, every: Sequence[Phase], open_phases: Sequence[Phase], last: End, begun: Begun
) -> _Start:
    """The step that is due; its phase anew where that step is not there any more."""
    if begun.at in sheet.nodes:
        return _Start(begun.at)
    if begun.phase in _keys(open_phases) and begun.at != sheet_builder.FINISHED:
        return _Start(f"@after:{begun.phase}") if begun.over else _Start(f"@{begun.phase}", (begun.phase,))
    if begun.phase in _keys(every) or not open_phases:
        return _Start(last.id)
    left_out = [phase.key for phase in sheet.technique.phases]
    if begun.phase in left_out:
        # It is not asked for in this setting: what follows it is due.
        following = [key for key in left_out[left_out.index(begun.phase) + 1 :] if key in _keys(every)]
        return _Start(f"@{following[0]}" if following and following[0] in _keys(open_phases) else last.id)
    # Another technique: its own phases from the first.
    return _Start(f"@{open_phases[0].key}", _keys(open_phases))


def _to_the_new_end(open_phases: Sequence[Phase], begun: Begun) -> _Start | None:
    """None where the work has not come to hand instruments at length yet."""
    if begun.phase not in _keys(open_phases):
        return None
    worked = open_phases[: _keys(open_phases).index(begun.phase) + 1]
    first = next((p.key for p in worked if p.kind is PhaseKind.TO_LENGTH and not p.to_estimate), None)
    return _Start(f"@{first}", _keys(open_phases)[_keys(open_phases).index(first) :]) if first else None


def _signed_before(every: Sequence[Phase], begun: Begun) -> bool:
    """Whether the work is past a word on the length, and no other one is due at once."""
    keys = _keys(every)
    if begun.phase not in keys:
        return False
    here = keys.index(begun.phase)
    passed = every[: here + 1 if begun.over else here]
    due = _asks_for_a_word(every[here]) and not begun.over
    return not due and any(_asks_for_a_word(phase) and phase.image for phase in passed)


def _asks_for_a_word(phase: Phase) -> bool:
    return phase.kind is PhaseKind.SIGN_OFF and bool(phase.hold_point)


def _behind(behind: Behind, start: _Start) -> Behind:
    visits = {step: count for step, count in behind.visits.items() if step.split("/")[0] not in start.anew}
    if start.place in visits:
        # It was come to already, and is counted again when the walk starts there.
        visits[start.place] -= 1
    depths = {step: each for step, each in behind.depths_um.items() if step.split("/")[0] not in start.anew}
    return Behind(visits=visits, depths_um=depths)


def _keys(phases: Sequence[Phase]) -> list[str]:
    return [phase.key for phase in phases]
