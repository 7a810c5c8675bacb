"""Where an order of work starts once some of it has been done: what is done is left out, what is withheld stays so."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace

from planning.contract.plan_input import PastInsertion, Progress
from planning.foundation.quantities import in_mm
from planning.run_sheet.graph import Action, End, Exit, Step, Walked
from planning.run_sheet.walk import Left, Walk
from planning.techniques.technique import Phase, PhaseKind
from planning.work import sheet_builder
from planning.work.form import Form
from planning.work.sheet_builder import Sheet

LENGTH_MOVED = "length-moved/sign-off"
"""The sign-off on a length that was taken again after it had been signed off."""


@dataclass(frozen=True, slots=True)
class _Start:
    place: str
    """A step or the place of one, as `sheet_builder.finish` takes it."""
    anew: Collection[str] = ()
    """Keys of the phases that begin anew: their passes and depths so far no longer count."""


def begun_by(
    walk: Walk, *, length_mm: float | None, before: Progress | None = None, made: tuple[PastInsertion, ...] = ()
) -> Progress:
    """Where the work stands after a walk. Its stops were set from the working length `length_mm`; `before` is the
    progress that its sheet began with, None for a first plan."""
    walked_before = Walked(
        passes=dict(walk.passes), depths_um={step: tuple(each) for step, each in walk.depths_um.items()}
    )
    last = walk.sheet.nodes[walk.left[-1].node] if walk.left else None
    # A walk that has ended stands at no step: the one that was answered last tells where it came to.
    due = walk.node if isinstance(walk.node, Step) else last
    if isinstance(due, Step) and due.id == LENGTH_MOVED and walk.node.id != due.exits[Exit.APPROVED]:
        # The sign-off on the length is still due, and after it the step at which the work stood before.
        at = due.exits[Exit.APPROVED]
        # `_behind` takes one off the step that the new sheet starts at. This one has not been come to yet, so it gets
        # one first.
        walked_before = replace(walked_before, passes={**walked_before.passes, at: walked_before.passes.get(at, 0) + 1})
        # No length equals None, so that the next sheet asks for the sign-off again.
        return Progress(at=at, phase=due.phase, walked_before=walked_before, length_mm=None, made=made)
    if isinstance(walk.node, Step):
        return Progress(at=walk.at, phase=walk.node.phase, walked_before=walked_before, length_mm=length_mm, made=made)
    if isinstance(last, Step):
        over = last.action is not Action.SIGN_OFF or _ends_phase(last, walk.left[-1])
        return Progress(
            at=walk.at, phase=last.phase, over=over, walked_before=walked_before, length_mm=length_mm, made=made
        )
    if before is not None:
        return replace(before, walked_before=walked_before, made=made)
    return Progress(at=walk.at, phase="", walked_before=walked_before, length_mm=length_mm, made=made)


def _ends_phase(last: Step, sign_off: Left) -> bool:
    """Whether this sign-off ends its phase: it is the phase's own and it approves. Else the phase is planned anew."""
    return (sign_off.node, sign_off.exit) == (f"{last.phase}/sign-off", Exit.APPROVED)


def finish(
    sheet: Sheet,
    every: Sequence[Phase],
    last: End,
    progress: Progress,
    length_mm: float | None,
    full_um: int,
) -> Form:
    """The order of work from where the work stands; `every` are the open phases and those that are withheld,
    `full_um` the stop at the length.

    A length that moved is signed off before anything else. Where it grew, no instrument has been at the new end yet,
    so the hand instruments go there first. Raises TechniqueNotUsable.
    """
    open_phases = sheet.asked.phases
    start = _where_it_stands(sheet, every, open_phases, last, progress)
    if length_mm is not None and progress.length_mm is not None and length_mm > progress.length_mm:
        start = _to_the_new_end(open_phases, progress) or start
    place = start.place
    # A sheet that ends at once has no step that a length would be signed off for.
    if place != sheet_builder.PLAN_AGAIN and length_mm != progress.length_mm and _signed_before(every, progress):
        phase = next(each for each in every if each.key == progress.phase)
        say = f"The length was taken again: all stops are set from {in_mm(full_um)} mm now."
        place = sheet.sign_off(phase, LENGTH_MOVED, "length", then=place, returned=sheet_builder.PLAN_AGAIN, say=say)
    return sheet_builder.finish(sheet, last, start=place, walked_before=_behind(progress.walked_before, start))


def _where_it_stands(
    sheet: Sheet, every: Sequence[Phase], open_phases: Sequence[Phase], last: End, progress: Progress
) -> _Start:
    """The step that is due, or the start of its phase where the new order of work has no such step."""
    if progress.at in sheet.nodes:
        return _Start(progress.at)
    if progress.phase in _keys(open_phases) and progress.at != sheet_builder.FINISHED:
        return _Start(f"@after:{progress.phase}") if progress.over else _Start(f"@{progress.phase}", (progress.phase,))
    # The phase is there and closed now: the new sheet ends at once, and its end says what has to be done first.
    if progress.phase in _keys(every) or not open_phases:
        return _Start(last.id)
    left_out = [phase.key for phase in sheet.technique.phases]
    if progress.phase in left_out:
        # This setting leaves the phase out: the one after it is due.
        following = [key for key in left_out[left_out.index(progress.phase) + 1 :] if key in _keys(every)]
        return _Start(f"@{following[0]}" if following and following[0] in _keys(open_phases) else last.id)
    # The technique was changed: its phases begin with the first.
    return _Start(f"@{open_phases[0].key}", _keys(open_phases))


def _to_the_new_end(open_phases: Sequence[Phase], progress: Progress) -> _Start | None:
    """The start of the hand instruments at length, from where all phases begin anew; None where the work has not come
    so far yet."""
    if progress.phase not in _keys(open_phases):
        return None
    worked = open_phases[: _keys(open_phases).index(progress.phase) + 1]
    first = next((p.key for p in worked if p.kind is PhaseKind.TO_LENGTH and not p.to_estimate), None)
    return _Start(f"@{first}", _keys(open_phases)[_keys(open_phases).index(first) :]) if first else None


def _signed_before(every: Sequence[Phase], progress: Progress) -> bool:
    """Whether the work is past a sign-off on the length, and no sign-off is due next anyway."""
    keys = _keys(every)
    if progress.phase not in keys:
        return False
    here = keys.index(progress.phase)
    passed = every[: here + 1 if progress.over else here]
    due = _asks_for_sign_off(every[here]) and not progress.over
    return not due and any(_asks_for_sign_off(phase) and phase.image for phase in passed)


def _asks_for_sign_off(phase: Phase) -> bool:
    return phase.kind is PhaseKind.SIGN_OFF and bool(phase.hold_point)


def _behind(walked_before: Walked, start: _Start) -> Walked:
    """What was walked before the start, as the new sheet goes on counting from it."""
    # The id of a step begins with the key of its phase.
    passes = {step: count for step, count in walked_before.passes.items() if step.split("/")[0] not in start.anew}
    if start.place in passes:
        # The walk counts a step when it comes to it, and this one was counted already.
        passes[start.place] -= 1
    depths = {step: each for step, each in walked_before.depths_um.items() if step.split("/")[0] not in start.anew}
    return Walked(passes=passes, depths_um=depths)


def _keys(phases: Sequence[Phase]) -> list[str]:
    return [phase.key for phase in phases]
