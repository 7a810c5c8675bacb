"""How far the work on each canal has come: the next plan starts from there."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from cases.domain.events.event import CourseEvent
from cases.domain.events.kinds import NotChecked
from cases.domain.events.payloads import AnswerPayload, StepPayload
from cases.domain.progress.case_state import CaseState, Sheets
from cases.domain.progress.undone import undone
from planning.contract.plan_input import PastInsertion, PlanInput, Progress
from planning.contract.plan_value import Plan
from planning.foundation.quantities import mm
from planning.run_sheet.graph import Action, Exit, Step, Target
from planning.work.mid_course import begun_by


def progress_of(
    course: CaseState, plans: Mapping[str, Sheets], events: Iterable[CourseEvent], plan_input: PlanInput, plan: Plan
) -> dict[str, Progress]:
    """The progress of each canal whose work has begun. `plan_input` and `plan` are of the version that is worked."""
    made = _made(plans, list(events))
    lengths_mm = {canal.canal: canal.length.working_length_mm for canal in plan.canals}
    before = {canal.name: canal.progress for canal in plan_input.canals}
    by_canal = {}
    for name, canal in course.canals.items():
        if canal.walk.left or before.get(name) or name in made:
            by_canal[name] = begun_by(
                canal.walk,
                length_mm=lengths_mm.get(name),
                before=before.get(name),
                made=tuple(made.get(name, ())),
            )
    return by_canal


def _made(plans: Mapping[str, Sheets], events: list[CourseEvent]) -> dict[str, list[PastInsertion]]:
    """The insertions in each canal, in order, over all versions of the plan. An event out of course counts too: the
    instrument was in the canal.

    Left out is an insertion whose depth nobody knows: the stop had slipped, or no depth was given.
    """
    gone = undone(events)
    answers = [event.payload for event in events if isinstance(event.payload, AnswerPayload)]
    slipped = {answer.asks for answer in answers if answer.cause == "stop_moved"}
    by_canal: dict[str, list[PastInsertion]] = {}
    for event in events:
        step = event.payload
        if not isinstance(step, StepPayload) or event.id in gone or event.id in slipped:
            continue
        # Whether such a depth can be right nobody could check, so nothing is learned from it.
        if event.not_checked is NotChecked.DEPTH:
            continue
        sheet = plans.get(event.plan, {}).get(event.canal)
        node = sheet.nodes.get(event.node) if sheet else None
        if isinstance(node, Step) and node.action is Action.INSTRUMENT and (insertion := _insertion(node, step)):
            by_canal.setdefault(event.canal, []).append(insertion)
    return by_canal


def _insertion(node: Step, step: StepPayload) -> PastInsertion | None:
    stop_um = node.stop_um if step.stop_um is None else step.stop_um
    depth_um = step.depth_um
    # "At its stop" is answered without a number.
    if depth_um is None and step.exit is Exit.REACHED:
        depth_um = stop_um
    if depth_um is None or node.instrument is None:
        return None
    return PastInsertion(
        step=node.id,
        phase=node.phase,
        instrument=node.instrument,
        depth_mm=mm(depth_um),
        stop_mm=None if stop_um is None else mm(stop_um),
        to_resistance=node.target is Target.TO_RESISTANCE,
    )
