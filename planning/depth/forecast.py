"""What is expected of a canal's order of work: every insertion on the way, by the contact-depth estimate.

The run sheet is walked with the estimate's depths, which are the median of the samples where there are some. A recorded
depth takes the estimate's place, and the walk goes on from there.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from planning.canal.profile import Line, Stand, narrow_line, narrows_upwards, upper, volume_mm3, wider_mm
from planning.contract.expected import (
    Against,
    Expectation,
    ExpectedStep,
    InitialShape,
    Judged,
    ProfilePoint,
    SeriesPasses,
    against,
)
from planning.contract.plan_input import PastInsertion, RecordedDepth
from planning.depth.belief import Band, Belief, every, quantile
from planning.depth.contact_depth import APART_MM, LightTouch, opened, to_resistance_mm
from planning.depth.descent import Descent, Series
from planning.depth.rows import Floats
from planning.foundation.quantities import mm, um
from planning.instruments.iso_3630 import Instrument, Motion
from planning.run_sheet.graph import Action, Exit, RunSheet, Step, Target
from planning.run_sheet.walk import Left, Walk, expected_exit


@dataclass(frozen=True, slots=True, kw_only=True)
class Working:
    """What a forecast of one canal starts from."""

    initial_shape: InitialShape
    kit: Mapping[str, Instrument]
    touch: LightTouch
    felt: Sequence[RecordedDepth]
    made: Sequence[PastInsertion]
    """What had been in the canal before the order of work begins."""
    tries: int
    """After this many tries to length the walk goes on as if it had been reached: the supervisor decides there."""
    flaring: frozenset[str]
    """Phases of coronal flaring."""
    descending: str | None
    """The phase of the descending series; none in a technique without one."""
    one_pass: Sequence[str]
    """The steps of one pass in order, from coronal flaring to the smallest of the series."""
    most_passes: int
    as_if_straight: bool
    """The canal is bent, and the estimate takes it as straight."""
    passed: Line = ()
    """How wide the canal is at least, as a hand instrument has shown; empty where nobody gauged."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Forecast:
    """The expected walk through a canal's order of work; all else that is expected of the canal is read off it."""

    path: tuple[str, ...]
    """Node ids in the order expected."""
    expectation: Expectation | None
    """None where no widths are known."""
    last: Judged | None = None
    """The last recorded depth that was expected in a band."""
    stood: tuple[Stand, ...] = ()
    """Where instruments have stood by the end of the walk, those of earlier orders of work included."""
    gauged: Mapping[str, bool] = field(default_factory=dict)
    """For each step that gauges the end: whether its instrument goes to length."""


def forecast(sheet: RunSheet, working: Working, belief: Belief | None = None, so_far: Walk | None = None) -> Forecast:
    """The path expected through a run sheet, and what is expected of every insertion on it; with a belief, in bands.

    With `so_far` the path begins as that walk went, whatever was expected then, and goes on from where it stands.
    """
    canal = upper(narrow_line(working.initial_shape), working.passed)
    walk = Walk(sheet)
    descent = Descent(belief, _series(sheet, working)) if belief and working.descending else None
    course = _Course(working=working, walk=walk, canal=canal, belief=belief, descent=descent)
    course.begin()
    before = course.outline() if working.made else ()
    if so_far is not None:
        course.follow(so_far)
    while isinstance(node := walk.node, Step):
        course.take(node, course.felt(node))
    return Forecast(
        path=tuple(walk.path),
        expectation=Expectation(
            initial_shape=working.initial_shape,
            prepared=before,
            steps=tuple(course.steps),
            series_passes=course.series_passes(),
            makes_room=course.makes_room,
            samples=belief.count if belief else 0,
            few_agree=belief is not None and belief.few_agree,
            narrows=narrows_upwards(canal),
        ),
        last=course.last,
        stood=tuple(course.stood),
        gauged=course.gauged,
    )


def _believed_mm(belief: Belief, depths_mm: Floats, felt: Against) -> float | None:
    """Where the instrument is believed to have stood when its recorded depth is not as expected and may be a slip; None
    where the recorded depth itself is believed.
    """
    return None if felt == "as_expected" or belief.few_agree else quantile(depths_mm, belief.weight, 1 / 2)


def _series(sheet: RunSheet, working: Working) -> Series:
    steps = [node for id_ in working.one_pass if isinstance(node := sheet.nodes.get(id_), Step)]
    return Series(
        steps=[(node, working.kit[node.instrument]) for node in steps if node.instrument],
        phase=working.descending or "",
        most_passes=working.most_passes,
    )


def _at_length(node: Step, left: Left) -> bool:
    return left.exit is Exit.REACHED or (left.depth_um or 0) >= (node.stop_um or 0)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Came:
    """How deep an instrument went at one step."""

    depth_mm: float
    band: Band | None = None
    """None where it is worked until it is at its stop, so that nothing is to be estimated."""
    felt: Against | None = None
    believed_mm: float | None = None
    """Where it is believed to have stood; None where that is `depth_mm`."""


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
    last: Judged | None = None
    stood: list[Stand] = field(default_factory=list)
    gauged: dict[str, bool] = field(default_factory=dict)
    volume_mm3: float = field(init=False)
    """Of the canal as it is by now."""

    def __post_init__(self) -> None:
        self.volume_mm3 = volume_mm3(self.canal, self.working.initial_shape)

    def begin(self) -> None:
        """Works the canal as earlier orders of work did. An instrument that the kit no longer has is left out: nobody
        knows its shape."""
        for number, made in enumerate(self.working.made):
            self.flared = self.flared or made.phase in self.working.flaring
            instrument = self.working.kit.get(made.instrument)
            if instrument is None:
                continue
            believed_mm = None if self.belief is None else self._believe(self.belief, number, instrument, made)
            self._stands(instrument, made.depth_mm if believed_mm is None else believed_mm)

    def _believe(self, belief: Belief, number: int, instrument: Instrument, made: PastInsertion) -> float | None:
        depths, believed_mm = every(made.depth_mm, belief.count), None
        # An engine instrument at its stop may have been pushed there; one short of it was led in by light touch.
        short = instrument.motion is not Motion.HAND and made.depth_mm < (made.stop_mm or 0.0)
        if made.stop_mm is not None and (made.to_resistance or short):
            stops, name = every(made.stop_mm, belief.count), f"made {number}"
            to_resistance = belief.to_resistance(instrument, stops)
            band = belief.band(name, to_resistance, stops)
            depths = belief.learn(name, made.depth_mm, to_resistance, stops)
            believed_mm = _believed_mm(
                belief, depths, against(made.depth_mm, (band.short_below_mm, band.deep_above_mm))
            )
        belief.stands(made.step, instrument, depths)
        return believed_mm

    def outline(self) -> tuple[ProfilePoint, ...]:
        return tuple(ProfilePoint(from_reference_mm=round(x, 2), diameter_mm=round(d, 3)) for x, d in self.canal)

    def follow(self, so_far: Walk) -> None:
        """Takes the steps as they were left, and goes to another step where a supervisor named one."""
        for left in so_far.left:
            self._go_to(left.node)
            self.take(self._node(left.node), left)
        self._go_to(so_far.at)

    def _go_to(self, step: str) -> None:
        if self.walk.at != step:
            self.walk.go_to(step)

    def take(self, node: Step, left: Left | None) -> None:
        """Answers one step as it was left, else as expected."""
        self.flared = self.flared or node.phase in self.working.flaring
        if node.action is Action.INSTRUMENT and node.instrument is not None:
            self._insert(node, self.working.kit[node.instrument], left)
            return
        if node.action is Action.GAUGE:
            # Only what was recorded teaches anything: what is merely expected was worked out from these samples.
            if left is not None:
                self._gauge(node, left)
            left = left or self._feels(node)
            self.gauged[node.id] = _at_length(node, left)
        self.walk.leave(left.exit if left else expected_exit(node), left.depth_um if left else None)

    def _feels(self, node: Step) -> Left:
        """How a gauging step is expected to be left: at length where the canal is wide enough all the way."""
        instrument, tip_mm = self.working.kit[node.instrument or ""], mm(node.stop_um or 0)
        line = Stand(instrument=instrument, tip_mm=tip_mm).line(self.canal[0][0])
        fits = wider_mm(line, self.canal) <= APART_MM
        return Left(node=node.id, exit=Exit.REACHED if fits else Exit.SHORT)

    def felt(self, node: Step) -> Left | None:
        """What was recorded at this pass of the step, where a depth can be an answer to it."""
        here = [felt for felt in self.working.felt if felt.node == node.id]
        pass_number = self.walk.passes[node.id]
        if pass_number > len(here) or Exit.SHORT not in node.exits:
            return None
        return Left(node=node.id, exit=Exit.SHORT, depth_um=um(here[pass_number - 1].depth_mm))

    def series_passes(self) -> SeriesPasses | None:
        """The passes of the descending series; None where it is not worked."""
        passes = [step.pass_number for step in self.steps if self._node(step.node).phase == self.working.descending]
        if not passes:
            return None
        if self.descent is None:
            return SeriesPasses(expected=max(passes), low=None, high=None)
        return self.descent.series_passes(max(passes))

    def _node(self, id_: str) -> Step:
        node = self.walk.sheet.nodes[id_]
        if not isinstance(node, Step):
            raise TypeError(f"{id_} is no step")
        return node

    def _gauge(self, node: Step, left: Left) -> None:
        """Learns from a hand instrument that gauged without cutting. Before coronal flaring it may be held higher up,
        and says nothing of the end."""
        if self.belief is not None and self.flared and _at_length(node, left) and node.instrument:
            self.belief.passed(self.working.kit[node.instrument], mm(node.stop_um or 0))

    def _insert(self, node: Step, instrument: Instrument, left: Left | None) -> None:
        felt_mm = self._felt_mm(left)
        came = self._came(node, instrument, felt_mm)
        removes_mm3 = self._stands(instrument, came.depth_mm if came.believed_mm is None else came.believed_mm)
        self.makes_room = self.makes_room or node.shorter_than is not None
        band = came.band if felt_mm is None else None
        self.steps.append(
            ExpectedStep(
                node=node.id,
                pass_number=self.walk.passes[node.id],
                instrument=instrument.key,
                depth_mm=mm(um(came.depth_mm)),
                low_mm=band.low_mm if band else None,
                high_mm=band.high_mm if band else None,
                reach_share=band.reach_share if band else None,
                removes_mm3=round(removes_mm3, 3),
                shape=self.outline(),
                felt=came.felt,
                short_below_mm=band.short_below_mm if band else None,
                deep_above_mm=band.deep_above_mm if band else None,
                as_if_straight=self.working.as_if_straight,
            )
        )
        if left is None:
            # Where the depth is the stop, the walk itself takes it as reached.
            self.walk.leave(Exit.SHORT, um(came.depth_mm))
        else:
            self.walk.leave(left.exit, left.depth_um)

    def _stands(self, instrument: Instrument, depth_mm: float) -> float:
        """Opens the canal by the instrument at a depth. Returns what it took off the wall [mm³]."""
        before_mm3 = self.volume_mm3
        self.canal = opened(instrument, self.canal, depth_mm, self.working.touch)
        self.volume_mm3 = volume_mm3(self.canal, self.working.initial_shape)
        self.stood.append(Stand(instrument=instrument, tip_mm=min(depth_mm, self.canal[-1][0])))
        return self.volume_mm3 - before_mm3

    def _felt_mm(self, left: Left | None) -> float | None:
        """The depth at which an instrument stopped, as recorded; None where no depth follows from it."""
        if left is None:
            return None
        if left.depth_um is None and left.exit is Exit.REACHED:
            return mm(self.walk.stop_um() or 0)
        return None if left.depth_um is None else mm(left.depth_um)

    def _came(self, node: Step, instrument: Instrument, felt_mm: float | None) -> _Came:
        stop_mm = mm(self.walk.stop_um() or 0)
        tried = self.walk.passes[node.id] > self.working.tries
        # A hand instrument is worked until it goes to its stop; it is not led in by light touch.
        worked = node.target is Target.TO_LENGTH and (instrument.motion is Motion.HAND or tried)
        if self.belief is not None and not worked:
            return self._sampled(self.belief, node, instrument, felt_mm)
        if felt_mm is not None:
            came = _Came(depth_mm=felt_mm)
        elif worked:
            came = _Came(depth_mm=stop_mm)
        else:
            came = _Came(depth_mm=to_resistance_mm(instrument, self.canal, stop_mm, self.working.touch))
        if self.belief is not None:
            self.belief.stands(node.id, instrument, every(came.depth_mm, self.belief.count))
        return came

    def _sampled(self, belief: Belief, node: Step, instrument: Instrument, felt_mm: float | None) -> _Came:
        """How deep the instrument goes by the samples. A recorded depth takes the place of theirs and weighs them."""
        pass_number = self.walk.passes[node.id]
        stops = belief.stops_mm(node)
        depths = belief.to_resistance(instrument, stops)
        band = belief.band(f"{node.id} {pass_number}", depths, stops)
        came = _Came(depth_mm=band.median_mm, band=band)
        if felt_mm is not None:
            depths = belief.learn(f"{node.id} {pass_number}", felt_mm, depths, stops)
            felt = against(felt_mm, (band.short_below_mm, band.deep_above_mm))
            came = _Came(depth_mm=felt_mm, band=band, felt=felt, believed_mm=_believed_mm(belief, depths, felt))
            self.last = Judged(
                node=node.id,
                pass_number=pass_number,
                depth_mm=felt_mm,
                low_mm=band.low_mm,
                high_mm=band.high_mm,
                felt=felt,
                as_if_straight=self.working.as_if_straight,
            )
        belief.stands(node.id, instrument, depths)
        if self.descent is not None and node.phase == self.working.descending:
            self.descent.note(node, pass_number, depths)
        return came
