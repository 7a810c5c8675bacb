"""A canal as planned and as done: where it ends, how wide it was made, and how the two differ."""

from __future__ import annotations

from collections.abc import Iterator

from cases.domain.events.payloads import StepPayload
from cases.domain.progress.canal_progress import CanalState
from cases.domain.record.case_history import CaseHistory, RecordedEvent
from cases.domain.record.steps import depth_um
from cases.domain.record.values.work import CanalShape
from planning.canal import profile
from planning.canal.profile import Stand
from planning.contract.expected import ProfilePoint
from planning.contract.plan_value import CanalPlan
from planning.foundation.quantities import in_mm, mm, um
from planning.run_sheet.graph import Action, Exit, Step


def planned(plan: CanalPlan | None) -> CanalShape | None:
    """The shape that the plan leads to; None where no plan has the canal."""
    return CanalShape(end_mm=plan.end_mm, size=plan.final_name, outline=plan.outline) if plan else None


def done(history: CaseHistory, canal: str, plan: CanalPlan | None) -> CanalShape | None:
    """The shape that the instruments left where they stood, by their recorded depths; None before the first.

    It ends where the largest that stood at the planned end stood; while none did, where the deepest one stood.
    """
    stands = list(_stands(history, canal))
    if not stands:
        return None
    end_um = um(plan.end_mm) if plan and plan.end_mm is not None else None
    at_end = [each for each in stands if end_um is not None and each[0] >= end_um]
    if at_end:
        largest_um, largest = max(at_end, key=lambda each: (_size(each[1]), each[0]))
    else:
        largest_um, largest = max(stands, key=lambda each: (each[0], _size(each[1])))
    orifice_mm = plan.outline[0].from_reference_mm if plan and plan.outline else None
    line = () if orifice_mm is None else profile.outline([stand for _, stand in stands], from_mm=orifice_mm)
    return CanalShape(
        end_mm=mm(largest_um),
        size=largest.instrument.name,
        outline=tuple(ProfilePoint(from_reference_mm=round(x, 2), diameter_mm=round(d, 3)) for x, d in line),
    )


def differs(planned: CanalShape | None, done: CanalShape | None, state: CanalState | None) -> tuple[str, ...]:
    """How the canal's end and size differ from the plan, a few words each; while it is worked, how far it is."""
    if done is None:
        return ("not begun",) if planned else ()
    if planned is None:
        return ("not planned",)
    if (done.end_mm, done.size) == (planned.end_mm, planned.size):
        return ("as planned",)
    end = "" if planned.end_mm in (None, done.end_mm) else f"planned {_mm(planned.end_mm)}"
    if state is not CanalState.FINISHED and not is_deeper(planned, done):
        return (f"so far {done.size}", *([f"to {_mm(done.end_mm)}"] if end else []))
    size = f"{done.size}, planned {planned.size}" if done.size != planned.size else ""
    return tuple(each for each in (end, size) if each)


def largest_at_length(planned: CanalShape | None, done: CanalShape | None) -> str | None:
    """The largest instrument that stood at the planned end or deeper, by name."""
    if planned is None or done is None or planned.end_mm is None or done.end_mm is None:
        return None
    return done.size if um(done.end_mm) >= um(planned.end_mm) else None


def is_deeper(planned: CanalShape | None, done: CanalShape | None) -> bool:
    """Whether the canal was worked deeper than planned."""
    if planned is None or done is None or planned.end_mm is None or done.end_mm is None:
        return False
    return um(done.end_mm) > um(planned.end_mm)


def end_mm(planned: CanalShape | None, done: CanalShape | None, state: CanalState | None) -> float | None:
    """Where the canal ends: as done once it is finished or was worked deeper than planned, before that as planned."""
    if done and (state is CanalState.FINISHED or is_deeper(planned, done) or planned is None):
        return done.end_mm
    return planned.end_mm if planned else None


def _stands(history: CaseHistory, canal: str) -> Iterator[tuple[int, Stand]]:
    """Where each instrument stood that went into the canal to work there, its depth in micrometres too."""
    for fact in history.counting:
        step = history.step(fact) if isinstance(fact.payload, StepPayload) and fact.canal == canal else None
        if step is None or step.action is not Action.INSTRUMENT:
            continue
        depth = _depth_um(history, fact, step)
        instrument = next((each for each in history.version(fact).kit.instruments if each.key == step.instrument), None)
        if depth and instrument:
            yield depth, Stand(instrument=instrument, tip_mm=mm(depth))


def _depth_um(history: CaseHistory, fact: RecordedEvent, step: Step) -> int | None:
    """How deep it worked; at the plan's stop where it was reached and the phone told neither stop nor depth.

    What is led on past a junction by its own stop works this canal only down to there.
    """
    depth, plan = depth_um(fact), history.version(fact).canal(fact.canal)
    if depth is None and isinstance(fact.payload, StepPayload) and fact.payload.exit is Exit.REACHED:
        depth = step.stop_um
    if depth is None or plan is None or plan.end_mm is None or step.stop_um is None:
        return depth
    return min(depth, um(plan.end_mm)) if step.stop_um > um(plan.end_mm) else depth


def _mm(end_mm: float | None) -> str:
    return "" if end_mm is None else in_mm(um(end_mm))


def _size(stand: Stand) -> tuple[int, int]:
    return stand.instrument.size, stand.instrument.taper
