"""The order of work of one canal: phases + length + kit → a finite graph of steps.

Each phase writes its own steps (`planning.work.phases`); this module holds what they share, joins them and proves that
every walk through the result ends.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from planning.canal.profile import Line, Stand, upper
from planning.foundation.errors import TechniqueNotUsable
from planning.foundation.quantities import mm
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import Instrument, Motion, sizes
from planning.run_sheet.graph import (
    Action,
    Ask,
    AtLength,
    End,
    Exit,
    Gained,
    Node,
    PassesBelow,
    RunSheet,
    ShorterThan,
    Step,
    Target,
    Walked,
    asked_of,
    next_ids,
    why_unsound,
)
from planning.techniques.technique import Phase, Technique
from planning.tray.selection import Selection
from planning.work import irrigation
from planning.work.irrigation import NeedleLimits

FINISHED = "finished"
PLAN_AGAIN = "plan-again"
Question = Gained | AtLength | PassesBelow


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalWork:
    """What the phases need to know of one canal. Depths in whole micrometres from the reference point."""

    canal: str
    full_um: int
    """Stop at the working length, or at the estimate before there is one."""
    end_um: int
    """Deepest stop of anything: short of `full_um` in a canal whose junction is known."""
    coronal_um: int
    """Stop of the coronal instruments."""
    first_third_um: int
    """Where the coronal third ends: no needle goes deeper before the length is signed off."""
    final_size: int | None
    """None while nobody has chosen one: nothing that goes by it is written."""
    largest_size: int | None = None
    """Nothing larger goes in as long as the junction of a joining canal has not been found; None: no such limit."""
    may_widen: bool = True
    """Whether the coronal third may be widened where the first instrument is held: not by a length that is in doubt."""
    irrigant: str
    final_rinse: tuple[str, ...]
    needle: NeedleLimits
    shape: Line
    """How wide the canal is at least before this order of work begins; empty where nothing is known."""

    above_short_um: int
    """How much further short of the end an instrument stays for each size that it lies above the final one."""
    nearest_um: int
    """An instrument above the final size never comes nearer to the end than this."""

    def shaping_stop_um(self, instrument: Instrument) -> int:
        """The end for sizes up to the final one; larger ones end short of it, a step for every size."""
        steps = self.sizes_above(instrument)
        if not steps:
            return self.end_um
        return max(0, self.end_um - max(steps * self.above_short_um, self.nearest_um))

    def sizes_above(self, instrument: Instrument) -> int:
        """How many sizes of the series it lies above the final one."""
        series = sizes()
        return max(0, bisect_right(series, instrument.size) - bisect_right(series, self.final))

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

    def __init__(self, work: CanalWork, selection: Selection, technique: Technique, figures: Figures) -> None:
        self.work = work
        self.selection = selection
        self.technique = technique
        self.figures = figures
        self.nodes: dict[str, Node] = {}
        self.starts: dict[str, str] = {}
        self.shape = work.shape
        """How wide the canal is at least at the step that is written next: the needle's depth follows from it."""
        self.at_end = selection.recapitulating
        """The hand instrument that was the last to go to the canal's end: what an image of a length shows."""

    def stood(self, instrument: Instrument, stop_um: int) -> None:
        """Notes that the instrument has stood there for certain before any step that is written from here on."""
        if instrument.motion is Motion.HAND and stop_um == self.work.end_um:
            self.at_end = instrument
        line = Stand(instrument=instrument, tip_mm=mm(stop_um)).line(mm(self.work.needle.orifice_um))
        self.shape = upper(self.shape, line)

    def add(self, node: Node) -> str:
        if node.id in self.nodes:
            raise TechniqueNotUsable(where=self.technique.name, reason=f"step '{node.id}' would be there twice")
        self.nodes[node.id] = node
        return node.id

    # --- steps that several phases use -------------------------------------------------------------------------

    def cut(
        self,
        phase: Phase,
        instrument: Instrument,
        *,
        stop_um: int,
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
        self.add(
            Step(
                id=id_,
                action=Action.INSTRUMENT,
                phase=phase.key,
                instrument=instrument.key,
                stop_um=stop_um,
                target=target,
                shorter_than=shorter_than,
                say=say or phase.why,
                # The same comes next at the stop and short of it; where that matters, a question after it decides.
                exits={Exit.REACHED: f"{id_}/irrigate", Exit.SHORT: f"{id_}/irrigate"},
            )
        )
        self.irrigate(phase, f"{id_}/irrigate", then=f"{id_}/recapitulate" if recapitulated else then)
        if recapitulated:
            self.recapitulate(phase, f"{id_}/recapitulate", small, then=then)
        return id_

    def irrigate(self, phase: Phase, id_: str, *, then: str, irrigant: str | None = None, rinse: bool = False) -> str:
        rinses_with, now_um = irrigant or self.work.irrigant, self.work.needle.now_um(self.shape)
        return self.add(
            Step(
                id=id_,
                action=Action.IRRIGATE,
                phase=phase.key,
                irrigant=rinses_with,
                volume_ml=self.figures["irrigant.rinse_ml" if rinse else "irrigant.between_ml"],
                # No length has been signed off while a phase goes to the estimate.
                needle_at_most_um=min(now_um, self.work.first_third_um) if phase.to_estimate else now_um,
                say=self._irrigate_says(rinses_with, rinse, now_um),
                exits={Exit.DONE: then},
            )
        )

    def _irrigate_says(self, irrigant: str, rinse: bool, now_um: int) -> str:
        if self.work.needle.chamber_alone(now_um):
            return irrigation.chamber_says(self.work.needle, self.shape)
        if rinse:
            return irrigation.rinse_says(irrigant, self.figures)
        return "Keep the needle loose and moving; take it back if it touches."

    def recapitulate(self, phase: Phase, id_: str, small: Instrument, *, then: str) -> str:
        return self.add(
            Step(
                id=id_,
                action=Action.RECAPITULATE,
                phase=phase.key,
                instrument=small.key,
                stop_um=self.work.end_um,
                target=Target.TO_LENGTH,
                say="Passes freely to its stop, once; no push.",
                exits={Exit.REACHED: then, Exit.BLOCKED: f"{phase.key}/blocked"},
            )
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


def finish(
    sheet: Sheet, phases: Sequence[Phase], last: End, start: str | None = None, walked_before: Walked | None = None
) -> RunSheet:
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
    for phase in reversed(phases):
        goals[f"after:{phase.key}"] = following
        following = goals.setdefault(phase.key, following)
    first = following if start is None else _placed(start, goals)
    reachable = _reachable(first, sheet.nodes, goals)
    if walked_before is not None:
        walked_before = Walked(
            passes={step: count for step, count in walked_before.passes.items() if step in reachable},
            depths_um={step: depths for step, depths in walked_before.depths_um.items() if step in reachable},
        )
    written = RunSheet(canal=sheet.work.canal, start=first, nodes=reachable, walked_before=walked_before)
    unsound = why_unsound(written)
    if unsound:
        raise TechniqueNotUsable(where=f"{sheet.technique.name}, {sheet.work.canal}", reason=unsound)
    return written


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
