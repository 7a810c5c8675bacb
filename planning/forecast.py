"""What is expected of a canal's order of work: every insertion on the way, by the contact-depth estimate.

The run sheet is walked with the estimate's depths; where a depth was recorded it takes the estimate's place, and the
walk goes on from there.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from planning.contact_depth import Insertion, Touch, insert, stand
from planning.expected import Expectation, ExpectedStep, NaturalCanal, Passes, ProfilePoint
from planning.graph import Action, Do, Exit, RunSheet, Target
from planning.instruments import Instrument, Motion
from planning.plan_input import Felt
from planning.profile import Line, narrow_line, narrows_upwards
from planning.quantities import mm, um
from planning.walk import Walk, expected_exit


@dataclass(frozen=True, slots=True, kw_only=True)
class Working:
    """What is worked with in one canal."""

    natural: NaturalCanal
    kit: Mapping[str, Instrument]
    touch: Touch
    felt: Sequence[Felt]
    tries: int
    """After this many tries to length the walk goes on as if it had been reached: the supervisor decides there."""
    first_of_pass: str | None
    """The step that starts a pass of the descending series; none in a technique without one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Forecast:
    path: tuple[str, ...]
    """Node ids in the order expected."""
    expectation: Expectation


def forecast(sheet: RunSheet, working: Working) -> Forecast:
    """The way expected through a run sheet, and what is expected of every insertion on it."""
    walk = Walk(sheet)
    canal = narrow_line(working.natural)
    course = _Course(working=working, walk=walk, canal=canal)
    while isinstance(node := walk.node, Do):
        course.take(node)
    passes = walk.visits.get(working.first_of_pass or "", 0)
    return Forecast(
        path=tuple(walk.path),
        expectation=Expectation(
            natural=working.natural,
            steps=tuple(course.steps),
            passes=Passes(expected=passes, low=None, high=None) if passes else None,
            makes_room=course.makes_room,
            samples=0,
            few_agree=False,
            narrows=narrows_upwards(canal),
        ),
    )


@dataclass(slots=True)
class _Course:
    working: Working
    walk: Walk
    canal: Line
    steps: list[ExpectedStep] = field(default_factory=list)
    makes_room: bool = False

    def take(self, node: Do) -> None:
        """Answers one step as expected, or as felt."""
        felt = self._felt(node)
        if node.action is Action.INSTRUMENT and node.instrument is not None:
            one = self.working.kit[node.instrument]
            insertion = self._insertion(node, one, felt)
            self.steps.append(self._step(node, one, insertion))
            self.canal = insertion.canal
            self.makes_room = self.makes_room or node.shorter_than is not None
            self.walk.leave(Exit.SHORT, um(insertion.depth_mm))
        elif felt is not None and Exit.SHORT in node.exits:
            self.walk.leave(Exit.SHORT, um(felt.depth_mm))
        else:
            self.walk.leave(expected_exit(node))

    def _felt(self, node: Do) -> Felt | None:
        """What was recorded at this visit of the step."""
        here = [felt for felt in self.working.felt if felt.node == node.id]
        visit = self.walk.visits[node.id]
        return here[visit - 1] if visit <= len(here) else None

    def _insertion(self, node: Do, one: Instrument, felt: Felt | None) -> Insertion:
        touch, stop_mm = self.working.touch, mm(self.walk.stop_um() or 0)
        if felt is not None:
            return stand(one, self.canal, felt.depth_mm, touch)
        # A hand instrument is worked until it goes to its stop; it is not led in by light touch.
        by_hand = one.motion is Motion.HAND
        tried = self.walk.visits[node.id] > self.working.tries
        if node.target is Target.TO_LENGTH and (by_hand or tried):
            return stand(one, self.canal, stop_mm, touch)
        return insert(one, self.canal, stop_mm, touch)

    def _step(self, node: Do, one: Instrument, insertion: Insertion) -> ExpectedStep:
        return ExpectedStep(
            node=node.id,
            visit=self.walk.visits[node.id],
            instrument=one.key,
            depth_mm=mm(um(insertion.depth_mm)),
            low_mm=None,
            high_mm=None,
            reach_share=None,
            removes_mm3=round(insertion.removes_mm3, 3),
            shape=tuple(
                ProfilePoint(from_reference_mm=round(x, 2), diameter_mm=round(d, 3)) for x, d in insertion.canal
            ),
        )
