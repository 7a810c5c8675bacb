"""What a list says of work at the chair: where the canals stand, the step in hand, and what was not as expected."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from cases.domain.course import CanalCourse, CanalState, Course, Happened
from cases.domain.events import EventKind
from planning.graph import Action, Do

TURNS_TO = frozenset({EventKind.STEP, EventKind.TURN})


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """Where four in five depths of one insertion are expected, and beyond where hardly a right one lies."""

    low_um: int
    high_um: int
    short_below_um: int
    deep_above_um: int


Bands = Mapping[tuple[str, str], Sequence[Band | None]]
"""By canal and step; one for each time the step is worked, none where nothing is expected."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OutOfBand:
    """A depth beyond where the plan would still have expected it, and the band that it told."""

    depth_um: int
    low_um: int
    high_um: int


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalAtAGlance:
    canal: str
    state: CanalState
    hold_point: str
    """What it waits for, or empty."""
    asked: bool
    """The student asked for a supervisor's word."""
    note: str
    """What is asked."""
    coming: bool
    """A supervisor comes to the chair."""
    out_of_band: OutOfBand | None
    """The canal's last depth, where it is shorter or deeper than the plan expected."""
    together: str = ""
    """Id shared by the canals that were asked for in one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StepInHand:
    canal: str
    node: str
    visit: int
    """Which time the step is worked, from 1."""
    phase: str
    action: Action
    instrument: str
    """Written size, or empty."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EmergencyAtAGlance:
    """An emergency that halts the tooth."""

    what: str
    """As last said; empty where it was not so."""
    at: datetime
    """When the server had it."""
    told_by: str
    """Name."""
    corrected_by: str
    """Name of who said what it was instead, or that it was not so; empty where nobody did."""
    coming: str
    """Name of the supervisor who goes there, or empty."""


def emergencies(course: Course, told: Mapping[str, tuple[str, datetime]]) -> tuple[EmergencyAtAGlance, ...]:
    """Those that halt the tooth. `told` says by event who told it, by name, and when."""
    return tuple(
        EmergencyAtAGlance(
            what=one.what,
            at=told[one.id][1],
            told_by=told[one.id][0],
            corrected_by=told[one.corrected_by][0] if one.corrected_by else "",
            coming=told[one.coming_by][0] if one.coming_by else "",
        )
        for one in course.emergencies.open
    )


def canals(course: Course, events: Iterable[Happened], bands: Bands) -> tuple[CanalAtAGlance, ...]:
    every = {event.id: event for event in events}
    last = _last_depths(course, every.values(), bands)
    return tuple(
        _canal(name, canal, every.get(canal.asking or ""), last.get(name)) for name, canal in course.canals.items()
    )


def in_hand(course: Course, events: Sequence[Happened], by: str, names: Mapping[str, str]) -> StepInHand | None:
    """The step of the canal that person `by` turned to last; None before the first, and where the canal has ended.

    `names` gives an instrument's written size by its key.
    """
    turned = (event.canal for event in reversed(events) if event.kind in TURNS_TO and event.actor == by)
    name = next((canal for canal in turned if canal in course.canals), None)
    if name is None:
        return None
    walk = course.canals[name].walk
    node = walk.node
    if not isinstance(node, Do):
        return None
    return StepInHand(
        canal=name,
        node=node.id,
        visit=walk.visits[node.id],
        phase=node.phase,
        action=node.action,
        instrument=names.get(node.instrument or "", ""),
    )


def _canal(name: str, canal: CanalCourse, asking: Happened | None, outside: OutOfBand | None) -> CanalAtAGlance:
    node = canal.walk.node
    hold_point = node.hold_point if isinstance(node, Do) and canal.state is CanalState.HOLD_POINT else None
    return CanalAtAGlance(
        canal=name,
        state=canal.state,
        hold_point=hold_point or "",
        asked=asking is not None,
        note=asking.body.get("note", "") if asking else "",
        coming=canal.coming is not None,
        out_of_band=outside,
        together=str(asking.body.get("together", "")) if asking else "",
    )


def _last_depths(course: Course, events: Iterable[Happened], bands: Bands) -> dict[str, OutOfBand | None]:
    """The last depth of each canal on the present plan, where it is shorter or deeper than expected."""
    visits: dict[tuple[str, str], int] = {}
    last: dict[str, OutOfBand | None] = {}
    for event in events:
        depth_um = event.body.get("depth_um")
        moved = event.id not in course.undone and event.id not in course.out_of_course
        if event.kind is not EventKind.STEP or event.plan != course.plan or depth_um is None or not moved:
            continue
        at = (event.canal, event.node)
        visit = visits[at] = visits.get(at, 0) + 1
        expected = bands.get(at, ())
        last[event.canal] = _outside(depth_um, expected[visit - 1] if visit <= len(expected) else None)
    return last


def _outside(depth_um: int, band: Band | None) -> OutOfBand | None:
    if band is None or band.short_below_um <= depth_um <= band.deep_above_um:
        return None
    return OutOfBand(depth_um=depth_um, low_um=band.low_um, high_um=band.high_um)
