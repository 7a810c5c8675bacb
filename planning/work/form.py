"""An order of work with its depths left open: written once for a technique and a kit, filled in for every canal.

Which steps there are and where they lead hangs on the technique, the kit and the sizes. What a canal's length and
widths decide are the stops, how deep the needle goes, and nothing else.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, fields
from typing import Any

from planning.canal.profile import Line, Stand, upper
from planning.foundation.quantities import mm
from planning.foundation.tables import Figure, Figures
from planning.instruments.iso_3630 import Instrument
from planning.run_sheet.graph import End, Node, RunSheet, Step, Walked
from planning.work import irrigation
from planning.work.irrigation import NeedleLimits


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalDepths:
    """What a form is filled in from. Depths in whole micrometres from the reference point."""

    full_um: int
    """Stop at the working length, or at the estimate before there is one."""
    end_um: int
    """Deepest stop of anything: short of `full_um` in a canal whose junction is known."""
    coronal_um: int
    """Stop of the coronal instruments."""
    first_third_um: int
    """Where the coronal third ends: no needle goes deeper before the length is signed off."""
    needle: NeedleLimits
    shape: Line
    """How wide the canal is at least before this order of work begins; empty where nothing is known."""

    def with_at_end(self, shape: Line, instrument: Instrument) -> Line:
        """The shape once the instrument has stood at the canal's end."""
        stand = Stand(instrument=instrument, tip_mm=mm(self.end_um))
        return upper(shape, stand.line(mm(self.needle.orifice_um)))


# --- what is left open ------------------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class StopAt:
    """Where an instrument's stop is set."""

    short_um: int = 0
    """So much short of the canal's end, but never above the reference point."""
    coronal: bool = False
    """At the stop of the coronal instruments instead."""

    def um(self, depths: CanalDepths) -> int:
        return depths.coronal_um if self.coronal else max(0, depths.end_um - self.short_um)


AT_END = StopAt()
CORONAL = StopAt(coronal=True)


@dataclass(frozen=True, slots=True)
class Rinsing:
    """How deep the needle goes, and what is said to it."""

    after: int
    """How many of the form's instruments have been at the canal's end for certain by then."""
    to_estimate: bool
    """No length has been signed off yet."""
    final: bool
    """The final rinse, which has a sentence of its own."""


@dataclass(frozen=True, slots=True)
class _NeedleAt:
    most_um: int
    says: str
    """What to do where it is free nowhere in the canal; else empty."""


class Blank:
    """A step with something left open."""

    def __init__(self, step: Step, open_: StopAt | Rinsing) -> None:
        filled_in = {"stop_um"} if isinstance(open_, StopAt) else {"needle_at_most_um", "say"}
        self.step, self.open = step, open_
        self._kept: dict[str, Any] = {f.name: getattr(step, f.name) for f in fields(Step) if f.name not in filled_in}

    def filled(self, depths: CanalDepths, needles: Sequence[_NeedleAt], figures: Figures) -> Step:
        if isinstance(self.open, StopAt):
            return Step(**self._kept, stop_um=self.open.um(depths))
        needle = needles[self.open.after]
        say = needle.says or self.step.say
        if self.open.final and not needle.says:
            say = irrigation.rinse_says(self.step.irrigant or "", figures)
        most_um = min(needle.most_um, depths.first_third_um) if self.open.to_estimate else needle.most_um
        return Step(**self._kept, needle_at_most_um=most_um, say=say)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Form:
    """An order of work that is sound: every way through it ends, whatever its depths are."""

    start: str
    nodes: Mapping[str, Node | Blank]
    at_end: tuple[Instrument, ...]
    """Instruments that stand at the canal's end for certain, one after the other."""
    walked_before: Walked | None
    rows: tuple[Figure, ...]
    """What it rests on."""

    def filled(self, canal: str, depths: CanalDepths, last: End, figures: Figures) -> RunSheet:
        """The canal's order of work; `last` is how its end is put there."""
        figures.rest_on(self.rows)
        needles = _needles(self.at_end, depths)
        nodes = {
            id_: node.filled(depths, needles, figures) if isinstance(node, Blank) else node
            for id_, node in self.nodes.items()
        }
        if last.id in nodes:
            nodes[last.id] = last
        return RunSheet(canal=canal, start=self.start, nodes=nodes, walked_before=self.walked_before)

    def unfilled(self) -> RunSheet:
        """The same steps with all depths 0, to be walked where no depth is asked for."""
        nodes = {id_: node.step if isinstance(node, Blank) else node for id_, node in self.nodes.items()}
        return RunSheet(canal="", start=self.start, nodes=nodes, walked_before=self.walked_before)


def _needles(at_end: Sequence[Instrument], depths: CanalDepths) -> list[_NeedleAt]:
    """The needle before the first of the instruments has been at the end, and after each of them."""
    limits, shape = depths.needle, depths.shape
    needles = [_needle(limits, shape)]
    for instrument in at_end:
        shape = depths.with_at_end(shape, instrument)
        needles.append(_needle(limits, shape))
    return needles


def _needle(limits: NeedleLimits, shape: Line) -> _NeedleAt:
    now_um = limits.now_um(shape)
    return _NeedleAt(now_um, irrigation.chamber_says(limits, shape) if limits.chamber_alone(now_um) else "")
