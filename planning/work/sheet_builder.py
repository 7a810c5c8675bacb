"""The order of work of one canal: phases + length + kit → a finite graph of steps.

Each phase writes its own steps (`planning.work.phases`); this module holds what they share, joins them and proves that
every walk through the result ends.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from planning.contract.plan_input import PlanInput
from planning.foundation.errors import TechniqueNotUsable
from planning.foundation.quantities import um
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import Instrument, Motion, sizes_between
from planning.run_sheet.graph import (
    Action,
    Ask,
    AtLength,
    End,
    Exit,
    Gained,
    Node,
    PassesBelow,
    ShorterThan,
    Step,
    Target,
    Walked,
    asked_of,
    next_ids,
    why_unsound,
)
from planning.techniques.technique import Phase
from planning.tray.selection import Selection
from planning.work.form import AT_END, Blank, Form, Rinsing, StopAt

FINISHED = "finished"
PLAN_AGAIN = "plan-again"
Question = Gained | AtLength | PassesBelow
Nested = frozenset[tuple[str, str]]
"""Keys of two instruments, the first of which is nowhere wider than the second."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """All that an order of work rests on but its depths. Two are equal where that is the same to the letter."""

    selection: Selection
    phases: tuple[Phase, ...]
    """Those that are open."""
    closed: bool
    """Whether others are withheld."""
    final_size: int | None
    """None while nobody has chosen one: nothing that goes by it is written."""
    largest_size: int | None
    """Nothing larger goes in as long as the junction of a joining canal has not been found; None: no such limit."""
    may_widen: bool
    """Whether the coronal third may be widened where the first instrument is held: not by a length that is in doubt."""
    nested: Nested
    """Which instruments lie within which others at the coronal stop."""
    canal: str = field(compare=False)
    """Named in refusals; what is refused is not remembered."""
    plan_input: PlanInput = field(compare=False)

    @property
    def final(self) -> int:
        """The final size, where there is one."""
        if self.final_size is None:
            raise ValueError(f"{self.canal}: no final size has been chosen")
        return self.final_size


class Sheet:
    """A run sheet while it is written.

    Phases add nodes. Until `finish` an exit may name a place in place of a node, because the node may not be there yet:
    `@next` is whatever comes after the phase, `@KEY` the start of phase KEY or an entry that a phase has named,
    `@after:KEY` whatever comes after phase KEY.
    """

    def __init__(self, asked: Asked) -> None:
        self.asked = asked
        self.selection = asked.selection
        self.technique = asked.plan_input.technique
        self.choices = asked.plan_input.choices
        self.figures = Figures(asked.plan_input.thresholds)
        self.above_short_um = um(self.figures["final.above_short"])
        """How much further short of the end an instrument stays for each size that it lies above the final one."""
        self.nearest_um = um(self.figures["make_room.less"])
        """An instrument above the final size never comes nearer to the end than this."""
        self.nodes: dict[str, Node] = {}
        self.open: dict[str, StopAt | Rinsing] = {}
        """What is left open, by step."""
        self.starts: dict[str, str] = {}
        self.at_end: list[Instrument] = []
        """What has been at the canal's end for certain before any step that is written from here on."""
        self.needle_after = 0
        """How many of these the needle goes by at the step that is written next."""
        self.shown = asked.selection.recapitulating
        """The hand instrument that was the last to go to the canal's end: what an image of a length shows."""

    def stood(self, instrument: Instrument) -> None:
        """Notes that the instrument has stood at the canal's end before any step that is written from here on."""
        if instrument.motion is Motion.HAND:
            self.shown = instrument
        self.at_end.append(instrument)
        self.needle_after = len(self.at_end)

    def sizes_above(self, instrument: Instrument) -> int:
        """How many sizes of the series it lies above the final one."""
        return sizes_between(self.asked.final, instrument.size)

    def short_um(self, instrument: Instrument) -> int:
        """How far short of the end a shaping instrument stays: one above the final size, a step for every size."""
        steps = self.sizes_above(instrument)
        return max(steps * self.above_short_um, self.nearest_um) if steps else 0

    def add(self, node: Node) -> str:
        if node.id in self.nodes:
            raise TechniqueNotUsable(where=self.technique.name, reason=f"step '{node.id}' would be there twice")
        self.nodes[node.id] = node
        return node.id

    def add_open(self, step: Step, open_: StopAt | Rinsing) -> str:
        """Adds a step, a depth of which each canal fills in; until then it is 0."""
        self.open[step.id] = open_
        return self.add(replace(step, stop_um=0) if isinstance(open_, StopAt) else replace(step, needle_at_most_um=0))

    # --- steps that several phases use -------------------------------------------------------------------------

    def cut(
        self,
        phase: Phase,
        instrument: Instrument,
        *,
        stop: StopAt,
        target: Target,
        then: str,
        id_: str | None = None,
        recapitulating: Instrument | None = None,
        recapitulated: bool = True,
        shorter_than: ShorterThan | None = None,
        say: str = "",
    ) -> str:
        """Adds an instrument, irrigation, and the small instrument to length again. Returns the first step's id."""
        small = recapitulating or self.selection.recapitulating
        id_ = id_ or f"{phase.key}/{step_name(instrument)}"
        recapitulated = recapitulated and instrument.size > self.selection.recapitulating.size
        self.add_open(
            Step(
                id=id_,
                action=Action.INSTRUMENT,
                phase=phase.key,
                instrument=instrument.key,
                target=target,
                shorter_than=shorter_than,
                say=say or phase.why,
                # The same comes next at the stop and short of it; where that matters, a question after it decides.
                exits={Exit.REACHED: f"{id_}/irrigate", Exit.SHORT: f"{id_}/irrigate"},
            ),
            stop,
        )
        self.irrigate(phase, f"{id_}/irrigate", then=f"{id_}/recapitulate" if recapitulated else then)
        if recapitulated:
            self.recapitulate(phase, f"{id_}/recapitulate", small, then=then)
        return id_

    def irrigate(self, phase: Phase, id_: str, *, then: str, irrigant: str | None = None, rinse: bool = False) -> str:
        return self.add_open(
            Step(
                id=id_,
                action=Action.IRRIGATE,
                phase=phase.key,
                irrigant=irrigant or self.choices.irrigant,
                volume_ml=self.figures["irrigant.rinse_ml" if rinse else "irrigant.between_ml"],
                say="Keep the needle loose and moving; take it back if it touches.",
                exits={Exit.DONE: then},
            ),
            Rinsing(after=self.needle_after, to_estimate=phase.to_estimate, final=rinse),
        )

    def recapitulate(self, phase: Phase, id_: str, small: Instrument, *, then: str) -> str:
        return self.add_open(
            Step(
                id=id_,
                action=Action.RECAPITULATE,
                phase=phase.key,
                instrument=small.key,
                target=Target.TO_LENGTH,
                say="Passes freely to its stop, once; no push.",
                exits={Exit.REACHED: then, Exit.BLOCKED: f"{phase.key}/blocked"},
            ),
            AT_END,
        )

    def ask(self, phase: Phase, id_: str, question: Question, *, yes: str, no: str) -> str:
        return self.add(Ask(id=id_, phase=phase.key, question=question, exits={Exit.YES: yes, Exit.NO: no}))

    def sign_off(self, phase: Phase, id_: str, hold_point: str, *, then: str, returned: str, say: str) -> str:
        return self.add(
            Step(
                id=id_,
                action=Action.SIGN_OFF,
                phase=phase.key,
                hold_point=hold_point,
                say=say,
                exits={Exit.APPROVED: then, Exit.RETURNED: returned},
            )
        )

    def image(self, phase: Phase, id_: str, *, then: str, say: str) -> str:
        return self.add(Step(id=id_, action=Action.IMAGE, phase=phase.key, say=say, exits={Exit.DONE: then}))

    def image_and_sign_off(
        self,
        phase: Phase,
        prefix: str,
        hold_point: str,
        *,
        then: str,
        say: str,
        shows: str,
        again_from: str | None = None,
    ) -> str:
        """Adds an image and the supervisor's sign-off; a returned image is taken again, a few times at most. `shows` is
        what has to be in the canal for it; a returned image is taken again from the step `again_from`."""
        image = f"{prefix}/image"
        shown = f"{shows}: image for the hold point {hold_point}."
        self.image(phase, image, then=f"{prefix}/sign-off", say=shown[0].upper() + shown[1:])
        self.sign_off(phase, f"{prefix}/sign-off", hold_point, then=then, returned=f"{prefix}/image-again", say=say)
        again = PassesBelow(node=image, n=self.figures.count("image.times"))
        self.ask(phase, f"{prefix}/image-again", again, yes=again_from or image, no=PLAN_AGAIN)
        return image


def step_name(instrument: Instrument) -> str:
    return f"{instrument.size:02d}-{instrument.taper:02d}"


def finish(sheet: Sheet, last: End, start: str | None = None, walked_before: Walked | None = None) -> Form:
    """Joins the phases in order, drops what cannot be reached and proves that every walk ends.

    It starts with the first phase or at `start`, a step or the place of one. Raises TechniqueNotUsable.
    """
    # `last` may itself be the end that asks for a new plan. It comes first, so that its sentence, which says why, is
    # kept.
    for end in (last, End(id=PLAN_AGAIN, outcome="plan_again", say="The plan no longer fits: make a new version.")):
        sheet.nodes.setdefault(end.id, end)
    goals = dict(sheet.starts)
    following = last.id
    # From the last to the first, so that a phase without steps stands for the start of whatever follows it.
    for phase in reversed(sheet.asked.phases):
        goals[f"after:{phase.key}"] = following
        following = goals.setdefault(phase.key, following)
    first = following if start is None else _placed(start, goals)
    reachable = _reachable(first, sheet.nodes, goals)
    if walked_before is not None:
        walked_before = Walked(
            passes={step: count for step, count in walked_before.passes.items() if step in reachable},
            depths_um={step: depths for step, depths in walked_before.depths_um.items() if step in reachable},
        )
    form = Form(
        start=first,
        nodes={
            id_: Blank(node, sheet.open[id_]) if isinstance(node, Step) and id_ in sheet.open else node
            for id_, node in reachable.items()
        },
        at_end=tuple(sheet.at_end),
        walked_before=walked_before,
        rows=sheet.figures.used(),
    )
    unsound = why_unsound(form.unfilled())
    if unsound:
        raise TechniqueNotUsable(where=f"{sheet.technique.name}, {sheet.asked.canal}", reason=unsound)
    return form


def _resolved(node: Node, goals: Mapping[str, str]) -> Node:
    if isinstance(node, End) or not any(to.startswith("@") for to in node.exits.values()):
        return node
    return replace(node, exits={exit_: _placed(to, goals, node.phase) for exit_, to in node.exits.items()})


def _placed(to: str, goals: Mapping[str, str], phase: str = "") -> str:
    """The step that a place stands for, seen from a phase."""
    # A place may stand for another one: the way up from the largest size, for instance, for what comes after that
    # phase.
    while to.startswith("@"):
        to = goals[f"after:{phase}" if to == "@next" else to[1:]]
    return to


def _reachable(start: str, nodes: Mapping[str, Node], goals: Mapping[str, str]) -> dict[str, Node]:
    """The nodes that a walk from the start can come to, in the order in which they were written, each place in their
    exits the step that it stands for."""
    reached: dict[str, Node] = {}
    waiting = [start]
    while waiting:
        id_ = waiting.pop()
        # A step that does not exist is left to `why_unsound`, which says where it was named.
        if id_ in reached or (node := nodes.get(id_)) is None:
            continue
        node = reached[id_] = _resolved(node, goals)
        # A question may be about a step before the start: the step has to be in the sheet for its stop.
        waiting += next_ids(node)
        waiting += asked_of(node)
    return {id_: reached[id_] for id_ in nodes if id_ in reached}
