"""What is expected of a canal's order of work: every insertion on the way, by the contact-depth estimate.

The run sheet is walked with the estimate's depths, the median of the samples where there are some; where a depth was
recorded it takes the estimate's place, and the walk goes on from there.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Literal

from planning.depth.belief import Band, Belief, every
from planning.depth.contact_depth import Touch, insert, stand
from planning.depth.descent import Descent, Series
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
    flaring: frozenset[str]
    """Phases of coronal flaring."""
    descending: str | None
    """The phase of the descending series; none in a technique without one."""
    most_passes: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Forecast:
    path: tuple[str, ...]
    """Node ids in the order expected."""
    expectation: Expectation


def forecast(sheet: RunSheet, working: Working, belief: Belief | None = None) -> Forecast:
    """The way expected through a run sheet, and what is expected of every insertion on it; bands with a belief."""
    canal = narrow_line(working.natural)
    walk = Walk(sheet)
    descent = Descent(belief, _series(sheet, working)) if belief and working.descending else None
    course = _Course(working=working, walk=walk, canal=canal, belief=belief, descent=descent)
    while isinstance(node := walk.node, Do):
        course.take(node)
    return Forecast(
        path=tuple(walk.path),
        expectation=Expectation(
            natural=working.natural,
            steps=tuple(course.steps),
            passes=course.passes(),
            makes_room=course.makes_room,
            samples=belief.count if belief else 0,
            few_agree=belief is not None and belief.few_agree,
            narrows=narrows_upwards(canal),
        ),
    )


def _series(sheet: RunSheet, working: Working) -> Series:
    phases = {*working.flaring, working.descending}
    return Series(
        steps=[
            (node, working.kit[node.instrument])
            for node in sheet.nodes.values()
            if isinstance(node, Do) and node.phase in phases and node.target is Target.TO_RESISTANCE and node.instrument
        ],
        phase=working.descending or "",
        most_passes=working.most_passes,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Came:
    """Where an instrument came to at one step."""

    depth_mm: float
    band: Band | None = None
    """None where it is worked to its stop, however often that takes."""
    felt: Literal["as_expected", "shorter", "longer"] | None = None


@dataclass(slots=True, kw_only=True)
class _Course:
    working: Working
    walk: Walk
    canal: Line
    belief: Belief | None
    descent: Descent | None
    steps: list[ExpectedStep] = field(default_factory=list)
    makes_room: bool = False
    flared: bool = False

    def take(self, node: Do) -> None:
        """Answers one step as expected, or as felt."""
        felt = self._felt(node)
        self.flared = self.flared or node.phase in self.working.flaring
        if node.action is Action.INSTRUMENT and node.instrument is not None:
            self._insert(node, self.working.kit[node.instrument], felt)
        elif felt is not None and Exit.SHORT in node.exits:
            self._gauge(node, felt)
        else:
            self.walk.leave(expected_exit(node))

    def passes(self) -> Passes | None:
        """Of the descending series; None where it is not worked."""
        visits = [step.visit for step in self.steps if self._node(step.node).phase == self.working.descending]
        if not visits:
            return None
        if self.descent is None:
            return Passes(expected=max(visits), low=None, high=None)
        return self.descent.passes(max(visits))

    def _node(self, id_: str) -> Do:
        node = self.walk.sheet.nodes[id_]
        if not isinstance(node, Do):
            raise TypeError(f"{id_} is no step")
        return node

    def _felt(self, node: Do) -> Felt | None:
        """What was recorded at this visit of the step."""
        here = [felt for felt in self.working.felt if felt.node == node.id]
        visit = self.walk.visits[node.id]
        return here[visit - 1] if visit <= len(here) else None

    def _gauge(self, node: Do, felt: Felt) -> None:
        """A hand instrument felt without cutting: only after coronal flaring does it say something of the end."""
        stop_um = node.stop_um or 0
        reached = node.action is Action.GAUGE and um(felt.depth_mm) >= stop_um
        if self.belief is not None and self.flared and reached and node.instrument:
            self.belief.passed(self.working.kit[node.instrument], mm(stop_um))
        self.walk.leave(Exit.SHORT, um(felt.depth_mm))

    def _insert(self, node: Do, one: Instrument, felt: Felt | None) -> None:
        came = self._came(node, one, felt)
        insertion = stand(one, self.canal, came.depth_mm, self.working.touch)
        self.canal = insertion.canal
        self.makes_room = self.makes_room or node.shorter_than is not None
        told = came.band if felt is None else None
        self.steps.append(
            ExpectedStep(
                node=node.id,
                visit=self.walk.visits[node.id],
                instrument=one.key,
                depth_mm=mm(um(came.depth_mm)),
                low_mm=told.low_mm if told else None,
                high_mm=told.high_mm if told else None,
                reach_share=told.reach_share if told else None,
                removes_mm3=round(insertion.removes_mm3, 3),
                shape=tuple(
                    ProfilePoint(from_reference_mm=round(x, 2), diameter_mm=round(d, 3)) for x, d in insertion.canal
                ),
                felt=came.felt,
            )
        )
        self.walk.leave(Exit.SHORT, um(came.depth_mm))

    def _came(self, node: Do, one: Instrument, felt: Felt | None) -> _Came:
        stop_mm = mm(self.walk.stop_um() or 0)
        tried = self.walk.visits[node.id] > self.working.tries
        # A hand instrument is worked until it goes to its stop; it is not led in by light touch.
        worked = node.target is Target.TO_LENGTH and (one.motion is Motion.HAND or tried)
        if self.belief is not None and not worked:
            return self._sampled(self.belief, node, one, felt)
        if felt is not None:
            came = _Came(depth_mm=felt.depth_mm)
        elif worked:
            came = _Came(depth_mm=stop_mm)
        else:
            came = _Came(depth_mm=insert(one, self.canal, stop_mm, self.working.touch).depth_mm)
        if self.belief is not None:
            self.belief.stands(node.id, one, every(came.depth_mm, self.belief.count))
        return came

    def _sampled(self, belief: Belief, node: Do, one: Instrument, felt: Felt | None) -> _Came:
        """By what the samples say; a recorded depth takes their places and weighs them."""
        visit = self.walk.visits[node.id]
        stops = belief.stops_mm(node)
        depths = belief.led(one, stops)
        band = belief.band(f"{node.id} {visit}", depths, stops)
        came = _Came(depth_mm=band.median_mm, band=band)
        if felt is not None:
            depths = belief.learn(f"{node.id} {visit}", felt.depth_mm, depths, stops)
            came = _Came(depth_mm=felt.depth_mm, band=band, felt=band.judged(felt.depth_mm))
        belief.stands(node.id, one, depths)
        if self.descent is not None and node.phase == self.working.descending:
            self.descent.note(node, visit, depths)
        return came
