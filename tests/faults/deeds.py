"""What is done next at the chair: mostly what the state of the work asks for, now and then something else."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from random import Random
from typing import Any

from cases.domain.events.event import CourseEvent
from cases.domain.events.kinds import EventKind
from cases.domain.events.registry import MAY_TELL, Part
from cases.domain.progress.canal_progress import CanalProgress, CanalState
from cases.domain.progress.case_state import CaseState
from cases.domain.progress.visit import CHECK
from planning.run_sheet.graph import Exit, Step

Deed = tuple[str, str, dict[str, Any]]
"""Canal, step, what is told."""
UNUSUAL = 0.15
SHORT_OF_UM = 1_500
PAST_UM = 400


@dataclass(frozen=True, slots=True)
class Owner:
    """Whose device it is, and the cookie of the sign-in."""

    person_id: str
    supervises: bool
    session: str


def deed(course: CaseState, events: Sequence[CourseEvent], owner: Owner, dice: Random) -> Deed:
    name = dice.choice(sorted(course.canals))
    if dice.random() < UNUSUAL:
        return _unusual(name, events, owner, dice)
    if owner.supervises:
        return _supervises(course, name, dice)
    return _works(course, name, course.canals[name], dice)


def _works(course: CaseState, name: str, canal: CanalProgress, dice: Random) -> Deed:
    if course.visit.closed:
        as_left = [each for each in sorted(course.canals) if dice.random() < 0.9]
        return "", "", {"kind": "reopen", "as_left": as_left}
    if canal.state is CanalState.PAST_STOP:
        cause = dice.choice(["stop_moved", "tip_wet"])
        return name, "", {"kind": "answer", "asks": canal.asked_by or "", "cause": cause}
    node = canal.walk.node
    if canal.state is not CanalState.OPEN or not isinstance(node, Step):
        return name, "", {"kind": "ask", "note": "Please look."}
    exit_ = dice.choice(sorted(node.exits))
    payload: dict[str, Any] = {"kind": "step", "exit": exit_.value}
    stop_um = canal.walk.stop_um()
    if stop_um is not None and exit_ in (Exit.REACHED, Exit.SHORT):
        payload |= {"stop_um": stop_um, "depth_um": max(0, stop_um - dice.randint(-PAST_UM, SHORT_OF_UM))}
    return name, node.id, payload


def _supervises(course: CaseState, name: str, dice: Random) -> Deed:
    if course.halted_by:
        return "", "", {"kind": "resume", "reason": "Seen to."}
    if course.visit.check_due:
        return "", CHECK, {"kind": "sign_off", "exit": "approved", "reason": ""}
    waits = [each for each, canal in course.canals.items() if canal.state is CanalState.HOLD_POINT]
    if waits:
        name = dice.choice(sorted(waits))
        exit_ = dice.choice(["approved", "approved", "returned"])
        return name, course.canals[name].walk.at, {"kind": "sign_off", "exit": exit_, "reason": "Seen."}
    if course.canals[name].held in (CanalState.PAUSED, CanalState.TO_CHECK, CanalState.PAST_STOP):
        return name, "", {"kind": "resume", "reason": "Go on."}
    return name, "", {"kind": "come", "note": ""}


def _unusual(name: str, events: Sequence[CourseEvent], owner: Owner, dice: Random) -> Deed:
    own = [event for event in events if event.actor == owner.person_id]
    if own and dice.random() < 0.3:
        undone = dice.choice(own[-2:])
        return undone.canal, "", {"kind": "undo", "undoes": undone.id}
    rare: list[Deed] = [
        (name, "no-such-step", {"kind": "step", "exit": "done"}),
        (name, "", {"kind": "pause", "reason": "Unsure."}),
        (name, "", {"kind": "turn"}),
        (name, "", {"kind": "note", "text": "Seen under the microscope."}),
        (name, "", {"kind": "irrigated", "irrigant": "saline", "volume_ml": 1.0}),
        ("", "", {"kind": "emergency", "what": "sudden_bleeding"}),
        ("", "", {"kind": "close", "access_sealed": True}),
    ]
    part = Part.LOOKING_IN if owner.supervises else Part.OWN_STUDENT
    return dice.choice([rare_deed for rare_deed in rare if part in MAY_TELL[EventKind(rare_deed[2]["kind"])]])
