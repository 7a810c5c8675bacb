"""The work on one canal: what was done, compared with what was planned."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from cases.domain.events.payloads import SignOffPayload, StepPayload
from cases.domain.progress.canal_progress import CanalState
from cases.domain.record.case_history import CaseHistory, RecordedEvent, Version
from cases.domain.record.values.work import StepComparison, StepRecord
from planning.contract.expected import Against, ExpectedStep, against
from planning.contract.plan_value import CanalPlan
from planning.foundation.quantities import mm
from planning.run_sheet.graph import Action, Exit, Step

StepPass = tuple[str, int]
"""A step and which time it is worked, from 1."""


def steps(history: CaseHistory, canal: str) -> tuple[StepRecord, ...]:
    """The steps of one canal, version after version. What an earlier version still expected when the next one took over
    is left out: the next version expects it itself.
    """
    by_hash: dict[str, list[RecordedEvent]] = {}
    for fact in history.counting:
        if fact.canal == canal and fact.event.node and isinstance(fact.payload, StepPayload | SignOffPayload):
            by_hash.setdefault(fact.event.plan, []).append(fact)
    last = history.course.plan if history.course else ""
    # With the plan in force even where nothing was done by it yet: what it expects is still to come.
    worked = sorted({*by_hash, last} & set(history.versions), key=lambda each: history.versions[each].number)
    records: list[StepRecord] = []
    for hash_ in worked:
        part = list(_of_version(history, history.versions[hash_], canal, by_hash.get(hash_, [])))
        kept = part if hash_ == last else [step for step in part if step.comparison is not StepComparison.NOT_YET]
        records += kept
    return tuple(records)


def _of_version(history: CaseHistory, version: Version, canal: str, done: list[RecordedEvent]) -> Iterator[StepRecord]:
    """The steps of one version: those done in their order, those passed over where they were expected."""
    plan = version.canal(canal)
    expected = _step_passes(list(plan.expected_path)) if plan else []
    planned = [step_pass for step_pass in expected if version.step(canal, step_pass[0]) is not None]
    facts = dict(zip(_step_passes([fact.event.node for fact in done]), done, strict=True))
    over = history.course is not None and _finished(history, canal)
    after = _passed_over(planned, facts)
    # First those that were expected before anything that was done.
    yield from (_planned(version, canal, plan, step_pass, StepComparison.LEFT_OUT) for step_pass in after.pop(None, ()))
    for step_pass, fact in facts.items():
        yield _done(version, canal, plan, step_pass, fact, as_planned=step_pass in planned)
        yield from (_planned(version, canal, plan, each, StepComparison.LEFT_OUT) for each in after.pop(step_pass, ()))
    ahead = StepComparison.LEFT_OUT if over else StepComparison.NOT_YET
    yield from (_planned(version, canal, plan, step_pass, ahead) for step_pass in _ahead(planned, facts))


def _finished(history: CaseHistory, canal: str) -> bool:
    course = history.course.canals.get(canal) if history.course else None
    return course is not None and course.state is CanalState.FINISHED


def _step_passes(nodes: list[str]) -> list[StepPass]:
    """The steps in their order, each with which time it is worked, from 1."""
    times: Counter[str] = Counter()
    step_passes: list[StepPass] = []
    for node in nodes:
        times[node] += 1
        step_passes.append((node, times[node]))
    return step_passes


def _ahead(planned: list[StepPass], facts: dict[StepPass, RecordedEvent]) -> list[StepPass]:
    """What is expected after the last expected step that was done."""
    last = max((number for number, step_pass in enumerate(planned) if step_pass in facts), default=-1)
    return planned[last + 1 :]


def _passed_over(
    planned: list[StepPass], facts: dict[StepPass, RecordedEvent]
) -> dict[StepPass | None, list[StepPass]]:
    """Expected steps that were not done although a later one was, listed by the step after which they were expected."""
    passed_over: dict[StepPass | None, list[StepPass]] = {}
    before: StepPass | None = None
    for step_pass in planned[: len(planned) - len(_ahead(planned, facts))]:
        if step_pass in facts:
            before = step_pass
        else:
            passed_over.setdefault(before, []).append(step_pass)
    return passed_over


def _planned(
    version: Version, canal: str, plan: CanalPlan | None, step_pass: StepPass, comparison: StepComparison
) -> StepRecord:
    step = version.step(canal, step_pass[0])
    if step is None:
        raise LookupError(f"{canal}: no step {step_pass[0]}")
    band = _band(plan, step_pass)
    return StepRecord(
        version=version.number,
        node=step_pass[0],
        pass_number=step_pass[1],
        phase=step.phase,
        action=step.action,
        instrument=version.instrument(step.instrument),
        comparison=comparison,
        stop_mm=None if step.stop_um is None else mm(step.stop_um),
        low_mm=band.low_mm if band else None,
        high_mm=band.high_mm if band else None,
        as_if_straight=band is not None and band.as_if_straight,
    )


def _done(
    version: Version, canal: str, plan: CanalPlan | None, step_pass: StepPass, fact: RecordedEvent, *, as_planned: bool
) -> StepRecord:
    step = version.step(canal, step_pass[0])
    depth, stop = depth_um(fact), fact.payload.stop_um if isinstance(fact.payload, StepPayload) else None
    band = _band(plan, step_pass)
    # Where the phone did not tell which stop it showed, the plan's own.
    if stop is None and step is not None:
        stop = step.stop_um
    return StepRecord(
        version=version.number,
        node=step_pass[0],
        pass_number=step_pass[1],
        phase=step.phase if step else "",
        action=step.action if step else _action(fact),
        instrument=version.instrument(step.instrument) if step else None,
        comparison=StepComparison.AS_PLANNED if as_planned else StepComparison.ADDED,
        stop_mm=None if stop is None else mm(stop),
        position=fact.position,
        how=_how(fact),
        depth_mm=None if depth is None else mm(depth),
        low_mm=band.low_mm if band else None,
        high_mm=band.high_mm if band else None,
        as_if_straight=band is not None and band.as_if_straight,
        against_band=_against(band, depth, step),
    )


def _action(fact: RecordedEvent) -> Action:
    """The action of a step that no plan has, as far as the event alone tells it."""
    if isinstance(fact.payload, SignOffPayload):
        return Action.SIGN_OFF
    return Action.IRRIGATE if isinstance(fact.payload, StepPayload) and fact.payload.irrigant else Action.INSTRUMENT


def _how(fact: RecordedEvent) -> Exit | None:
    return Exit(fact.payload.exit) if isinstance(fact.payload, StepPayload | SignOffPayload) else None


def depth_um(fact: RecordedEvent) -> int | None:
    """The recorded depth; where the stop was reached and no depth given, the stop that was shown."""
    step = fact.payload
    if not isinstance(step, StepPayload):
        return None
    return step.stop_um if step.depth_um is None and step.exit is Exit.REACHED else step.depth_um


def _band(plan: CanalPlan | None, step_pass: StepPass) -> ExpectedStep | None:
    steps_ = plan.expectation.steps if plan and plan.expectation else ()
    return next((each for each in steps_ if (each.node, each.pass_number) == step_pass), None)


def _against(expected: ExpectedStep | None, depth_um: int | None, step: Step | None) -> Against | None:
    limits = expected.limits_mm if expected else None
    return None if limits is None or depth_um is None or step is None else against(mm(depth_um), limits)
