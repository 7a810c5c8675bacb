"""An exercise: a level, a seed and what was done so far. All else is worked anew from them, to the last bit."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from enum import StrEnum
from typing import Annotated

from planning.contract.plan_value import CanalPlan, Plan
from planning.foundation.bounds import within
from planning.foundation.errors import PlanningError
from planning.foundation.quantities import mm, um
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import Instrument, Motion
from planning.practice.levels import kit, planned
from planning.practice.mistakes import PracticeMistake, mistake
from planning.practice.truth import Truth, lengths_mm, truths
from planning.practice.working import CanalNow, felt_mm, not_recapitulated, put_in, recapitulated
from planning.run_sheet.graph import Action, Exit, Step, Target
from planning.run_sheet.walk import Walk, expected_exit

MOST_ACTS = 300  # more than any walk through a level asks for, with room for what is needless
HANDLED = frozenset({Action.INSTRUMENT, Action.RECAPITULATE, Action.GAUGE})
OVER = frozenset({Action.FIT_CONE, Action.DRY, Action.FILL})
"""With the first of these the canal is shaped: practice is over there."""


class ActRefused(PlanningError):
    """What cannot be done at this point of an exercise.

    Look at its state: it names the step that is due.
    """

    code = "act-refused"
    sentence = "{reason}"


class ActKind(StrEnum):
    """What a student does in practice."""

    WORK = "work"
    """The step that is due."""
    SKIP = "skip"
    """Go on without it."""
    INSERT = "insert"
    """Put in an instrument that is not due."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Act:
    """One thing that the student did."""

    kind: ActKind
    predicted_mm: Annotated[float, within("depth")] | None = None
    """Where the student expects the instrument to stop; None where no prediction was made."""
    force: bool = False
    """Pushed past resistance."""
    past_mm: Annotated[float, within("depth")] = 0.0
    """How far past the step's own stop the stop was set."""
    instrument: str | None = None
    """Key in the kit, for an insertion that is not due."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ActDone:
    """What came of an act."""

    number: int
    canal: str
    node: str
    """The step in the canal's order of work."""
    instrument: str
    """Key in the kit."""
    act: Act
    """What the student did."""
    depth_mm: float | None
    """Where the tip stopped; None where the step was left out."""
    stop_mm: float
    """The step's own stop."""
    judged: bool
    """The prediction counts: how deep the instrument would go was not known before."""
    low_mm: float | None
    """Between this and `high_mm` four fifths of such canals stop it; None where the plan foresaw no such insertion."""
    high_mm: float | None
    mistakes: tuple[PracticeMistake, ...]
    """What was done wrong with it, and what that came to."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StepDue:
    """The step that is due, as its student may know it."""

    canal: str
    node: str
    """The step in the canal's order of work."""
    action: Action
    instrument: str
    """Key in the kit."""
    stop_mm: float
    judged: bool
    """How deep it goes is not known before: a prediction counts."""
    say: str


@dataclass(slots=True, kw_only=True)
class Exercise:
    """One exercise in progress. What is not marked as hidden its student may see."""

    level: str
    plan: Plan
    done: list[ActDone] = field(default_factory=list)
    hidden: tuple[Truth, ...]
    """The truth: for nobody before the reveal."""
    worked: list[CanalNow]
    """Hidden too."""
    number: int = 0
    """Of the canal that is worked."""
    walk: Walk

    @classmethod
    def begun(cls, level: str, seed: int) -> Exercise:
        """A new exercise. Raises UnknownLevel."""
        plan, hidden = planned(level, lengths_mm(level, seed)), truths(level, seed)
        worked = [CanalNow(shape=truth.shape) for truth in hidden]
        exercise = cls(level=level, plan=plan, hidden=hidden, worked=worked, walk=Walk(plan.canals[0].run_sheet))
        exercise._go_on()
        return exercise

    @classmethod
    def after(cls, level: str, seed: int, acts: Iterable[Act]) -> Exercise:
        """The exercise after these acts. Raises UnknownLevel, ActRefused."""
        exercise = cls.begun(level, seed)
        for act in acts:
            exercise.act(act)
        return exercise

    @classmethod
    def faultless(cls, level: str, seed: int) -> Exercise:
        """The work of one who keeps to the order of work, in this very canal: what steps are counted against."""
        exercise = cls.begun(level, seed)
        while not exercise.finished:
            exercise.act(Act(kind=ActKind.WORK))
        return exercise

    @property
    def finished(self) -> bool:
        return self.number >= len(self.hidden)

    @property
    def due(self) -> StepDue | None:
        """None once all canals are worked."""
        if self.finished:
            return None
        node = self._step
        return StepDue(
            canal=self.canal.canal,
            node=node.id,
            action=node.action,
            instrument=node.instrument or "",
            stop_mm=mm(self.walk.stop_um() or 0),
            judged=_is_judged(node),
            say=node.say,
        )

    @property
    def canal(self) -> CanalPlan:
        return self.plan.canals[self.number]

    @property
    def _step(self) -> Step:
        node = self.walk.node
        if not isinstance(node, Step):
            raise TypeError(f"{node.id} is no step")
        return node

    def act(self, act: Act) -> ActDone:
        """Does one thing. Raises ActRefused."""
        self._refuse(act)
        done = {ActKind.WORK: self._work, ActKind.SKIP: self._skip, ActKind.INSERT: self._insert}[act.kind](act)
        self.done.append(done)
        self._go_on()
        return done

    def _refuse(self, act: Act) -> None:
        if self.finished:
            raise ActRefused(reason="All canals of this exercise are worked.")
        if len(self.done) >= MOST_ACTS:
            raise ActRefused(reason="This exercise has become too long. Begin another.")
        if act.past_mm > Figures()["practice.past_most"]:
            raise ActRefused(reason="The stop cannot be set so far past the end.")
        if act.kind is ActKind.SKIP and self._step.action is Action.GAUGE:
            raise ActRefused(reason="Gauging cannot be left out: the final size goes by it.")
        if act.kind is ActKind.INSERT and act.instrument not in laid_out(self.canal):
            raise ActRefused(reason="This instrument is not laid out for the canal.")

    def _work(self, act: Act) -> ActDone:
        node, truth, canal = self._step, self.hidden[self.number], self.worked[self.number]
        instrument, stop_um = _by_key(node.instrument), self.walk.stop_um() or 0
        mistakes: tuple[PracticeMistake, ...] = ()
        if node.action is Action.GAUGE:
            depth_mm = felt_mm(truth, canal, instrument, mm(stop_um))
        elif node.action is Action.RECAPITULATE:
            canal, there = recapitulated(canal)
            depth_mm = mm(stop_um) if there else canal.block_mm or 0.0
        else:
            stopped = put_in(
                truth,
                canal,
                instrument,
                mm(stop_um) + act.past_mm,
                to_length=node.target is Target.TO_LENGTH,
                force=act.force,
                small=_small(instrument),
            )
            depth_mm, canal, mistakes = stopped.depth_mm, stopped.canal, stopped.mistakes
        self.worked[self.number] = canal
        done = self._done(act, node.id, instrument, depth_mm, stop_um, mistakes, judged=_is_judged(node))
        self._leave(node, um(depth_mm), stop_um)
        return done

    def _leave(self, node: Step, depth_um: int, stop_um: int) -> None:
        if depth_um >= stop_um:
            self.walk.leave(Exit.REACHED, stop_um)
        elif Exit.SHORT in node.exits:
            self.walk.leave(Exit.SHORT, depth_um)
        else:
            self.walk.leave(Exit.BLOCKED)

    def _skip(self, act: Act) -> ActDone:
        node, canal = self._step, self.worked[self.number]
        if node.action is Action.RECAPITULATE:
            self.worked[self.number], harm = not_recapitulated(canal)
        else:
            self.worked[self.number], harm = replace(canal, size_skipped=True), mistake("size-skipped")
        done = self._done(act, node.id, _by_key(node.instrument), None, self.walk.stop_um() or 0, (harm,))
        # Whoever leaves a step out goes on as if it had been done.
        self.walk.leave(expected_exit(node))
        return done

    def _insert(self, act: Act) -> ActDone:
        instrument, stop_um = _by_key(act.instrument), laid_out(self.canal)[act.instrument or ""]
        stopped = put_in(
            self.hidden[self.number],
            self.worked[self.number],
            instrument,
            mm(stop_um) + act.past_mm,
            to_length=True,
            force=act.force,
            small=_small(instrument),
        )
        self.worked[self.number] = stopped.canal
        mistakes = (mistake("needless"), *stopped.mistakes)
        return self._done(act, self.walk.at, instrument, stopped.depth_mm, stop_um, mistakes)

    def _done(
        self,
        act: Act,
        node: str,
        instrument: Instrument,
        depth_mm: float | None,
        stop_um: int,
        mistakes: tuple[PracticeMistake, ...],
        *,
        judged: bool = False,
    ) -> ActDone:
        low_mm, high_mm = (judged and self.band_mm(node)) or (None, None)
        return ActDone(
            number=len(self.done) + 1,
            canal=self.canal.canal,
            node=node,
            instrument=instrument.key,
            act=act,
            depth_mm=None if depth_mm is None else mm(um(depth_mm)),
            stop_mm=mm(stop_um),
            judged=judged,
            low_mm=low_mm,
            high_mm=high_mm,
            mistakes=mistakes,
        )

    def band_mm(self, node: str) -> tuple[float, float] | None:
        """Where the plan expects the step's instrument to stop at this pass; None where it foresaw no such pass."""
        expected = self.canal.expectation
        for step in expected.steps if expected else ():
            if (step.node, step.pass_number) == (node, self.walk.passes.get(node)) and step.low_mm is not None:
                return step.low_mm, step.high_mm or step.low_mm
        return None

    def _go_on(self) -> None:
        """Passes over what no hand works in practice: rinsing, images, the supervisor's word. Then the next canal."""
        while not self.finished:
            node = self.walk.node
            if isinstance(node, Step) and node.action in HANDLED:
                return
            if isinstance(node, Step) and node.action not in OVER:
                self.walk.leave(expected_exit(node))
                continue
            self.number += 1
            if not self.finished:
                self.walk = Walk(self.canal.run_sheet)


def laid_out(canal: CanalPlan) -> dict[str, int]:
    """The deepest stop, in micrometres, of every instrument that is laid out for the canal."""
    stops: dict[str, int] = {}
    for node in canal.run_sheet.nodes.values():
        if isinstance(node, Step) and node.action in HANDLED and node.instrument and node.stop_um:
            stops[node.instrument] = max(stops.get(node.instrument, 0), node.stop_um)
    return stops


def _is_judged(node: Step) -> bool:
    return node.action is Action.INSTRUMENT and _by_key(node.instrument).motion is not Motion.HAND


def _by_key(key: str | None) -> Instrument:
    return next(instrument for instrument in kit().instruments if instrument.key == key)


def _small(instrument: Instrument) -> bool:
    """A hand file that can be pre-curved: it passes a ledge."""
    return instrument.motion is Motion.HAND and instrument.size <= Figures().count("practice.precurved_to")
