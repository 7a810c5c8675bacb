"""What a list says of work at the chair: where the canals stand, the step in hand, and what was not as expected."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from cases.domain.events.event import CourseEvent
from cases.domain.events.payloads import AskPayload, StepPayload, TurnPayload
from cases.domain.progress.canal_progress import CanalProgress, CanalState
from cases.domain.progress.case_state import CaseState
from cases.domain.progress.visit import Prerequisite
from planning.contract.expected import Judged
from planning.depth.last_depth import Ahead, last_depth
from planning.foundation.quantities import um
from planning.run_sheet.graph import Action, Step

NOTHING_EXPECTED = Ahead()


@dataclass(frozen=True, slots=True, kw_only=True)
class OutOfBand:
    """A depth beyond where it would still have been expected, and the band that it was expected in."""

    depth_um: int
    low_um: int
    high_um: int
    as_if_straight: bool = False
    """The canal is bent, and the estimate knows nothing of it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalSummary:
    canal: str
    state: CanalState
    hold_point: str
    """What it waits for, or empty."""
    asked: bool
    """The student asked for a supervisor's sign-off."""
    note: str
    """What is asked."""
    coming: bool
    """A supervisor comes to the chair."""
    out_of_band: OutOfBand | None
    """The canal's last depth, where it is shorter or deeper than expected."""
    together: str = ""
    """Id shared by the canals that the student asked for at once."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StepInHand:
    canal: str
    node: str
    pass_number: int
    """Which time the step is worked, from 1."""
    phase: str
    action: Action
    instrument: str
    """Written size, or empty."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EmergencySummary:
    """An emergency that halts the tooth."""

    what: str
    """As last said; empty where it was not so."""
    at: datetime
    """When the server had it."""
    told_by: str
    """Name."""
    corrected_by: str
    """Name of the person who corrected it last; empty where nobody did."""
    coming: str
    """Name of the supervisor who goes there, or empty."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseSummary:
    """Where the work on a tooth stands, as a list shows it."""

    plan_hash: str
    """Of the plan that is worked."""
    emergencies: tuple[EmergencySummary, ...]
    """Those that halt the tooth, the first one first."""
    check_due: bool
    """The visit was closed and waits for a supervisor's check."""
    missing: tuple[Prerequisite, ...]
    """What has to be there before any canal is worked."""
    canals: tuple[CanalSummary, ...]
    now: StepInHand | None
    """The step in the student's hand."""


def emergencies(course: CaseState, tellers: Mapping[str, tuple[str, datetime]]) -> tuple[EmergencySummary, ...]:
    """The emergencies that halt the tooth. `tellers` gives for each event the name of who told it, and when."""
    return tuple(
        EmergencySummary(
            what=emergency.what,
            at=tellers[emergency.id][1],
            told_by=tellers[emergency.id][0],
            corrected_by=tellers[emergency.corrected_by][0] if emergency.corrected_by else "",
            coming=tellers[emergency.coming_by][0] if emergency.coming_by else "",
        )
        for emergency in course.emergencies.open
    )


def canals(course: CaseState, events: Iterable[CourseEvent], known: Mapping[str, Ahead]) -> tuple[CanalSummary, ...]:
    """Each canal as a list shows it. `known`: what is expected of it, by its plan or by what was recorded since."""
    asked = {event.id: event.payload for event in events if isinstance(event.payload, AskPayload)}
    return tuple(
        _canal(name, canal, asked.get(canal.asking or ""), known.get(name, NOTHING_EXPECTED))
        for name, canal in course.canals.items()
    )


def in_hand(course: CaseState, events: Sequence[CourseEvent], by: str, names: Mapping[str, str]) -> StepInHand | None:
    """The step of the canal that person `by` turned to last; None before the first, and where the canal has ended.

    `names` gives an instrument's written size by its key.
    """
    own = (event for event in reversed(events) if event.actor == by)
    turned = (event.canal for event in own if isinstance(event.payload, StepPayload | TurnPayload))
    name = next((canal for canal in turned if canal in course.canals), None)
    if name is None:
        return None
    walk = course.canals[name].walk
    node = walk.node
    if not isinstance(node, Step):
        return None
    return StepInHand(
        canal=name,
        node=node.id,
        pass_number=walk.passes[node.id],
        phase=node.phase,
        action=node.action,
        instrument=names.get(node.instrument or "", ""),
    )


def _canal(name: str, canal: CanalProgress, asking: AskPayload | None, known: Ahead) -> CanalSummary:
    node = canal.walk.node
    hold_point = node.hold_point if isinstance(node, Step) and canal.state is CanalState.HOLD_POINT else None
    return CanalSummary(
        canal=name,
        state=canal.state,
        hold_point=hold_point or "",
        asked=asking is not None,
        note=asking.note if asking else "",
        coming=canal.coming is not None,
        out_of_band=_outside(last_depth(known, canal.walk)),
        together=asking.together if asking else "",
    )


def _outside(last: Judged | None) -> OutOfBand | None:
    if last is None or last.felt == "as_expected":
        return None
    return OutOfBand(
        depth_um=um(last.depth_mm),
        low_um=um(last.low_mm),
        high_um=um(last.high_mm),
        as_if_straight=last.as_if_straight,
    )
