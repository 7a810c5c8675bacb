"""Courses drawn by a seed: mostly what the state of the work asks for, now and then anything anybody could tell."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from random import Random
from typing import Any

from cases.domain.events.event import CourseEvent
from cases.domain.events.kinds import EventKind, NotChecked
from cases.domain.progress.course import CanalCourse, CanalState, Course, Sheets, fold
from cases.domain.progress.visit import CHECK, RENEW
from planning.run_sheet.graph import Action, Do, Exit
from planning.run_sheet.walk import expected_exit
from planning.techniques.technique import Setting

STUDENT, SUPERVISORS = "student", ("vale", "ward")
NO_CANAL = "constructor"
"""No canal of any tooth, and a name that every object has on the phone."""
HOPED_FOR = (Exit.REACHED, Exit.DONE, Exit.APPROVED, Exit.YES)
SHORT_OF_UM = 1_500
PAST_UM = 100
IMAGES = ("i1", "i2")
PUT_RIGHT_SHARE = 0.3
"""So often an image is put right just after the word on it; more often no canal would come to its end."""
WHAT = ("sudden_bleeding", "instrument_separated", "hypochlorite_accident")

Told = tuple[str, str, dict[str, Any]]
"""Canal, step, body."""


@dataclass(frozen=True, slots=True)
class Luck:
    """How often something is not as it was asked for."""

    anything: float
    """Any kind of event, whatever the state of the work."""
    not_hoped_for: float
    """A step is left by any of its exits."""
    by_another_plan: float
    not_checked: float


WILD = Luck(0.25, 1.0, 0.05, 0.03)
CALM = Luck(0.01, 0.03, 0.001, 0.001)
"""Comes to a canal's end."""


@dataclass(slots=True)
class Drawn:
    """One tooth's course as far as it is drawn."""

    plans: Mapping[str, Sheets]
    setting: Setting
    dice: Random
    luck: Luck
    events: list[CourseEvent] = field(default_factory=list)

    def course(self) -> Course:
        return fold(self.plans, self.events, setting=self.setting)

    def draw(self, count: int) -> None:
        self._happens(EventKind.REPLAN, Course(visit=self.course().visit), sorted(self.plans)[0])
        while len(self.events) < count:
            course = self.course()
            kind = (
                self.dice.choice(list(EventKind)) if self.chance(self.luck.anything) else _asked_for(course, self.dice)
            )
            self._happens(kind, course, course.plan)

    def _happens(self, kind: EventKind, course: Course, plan: str) -> None:
        canal, node, body = _TELL[kind](self, course)
        if self.chance(self.luck.by_another_plan) or (kind is EventKind.REPLAN and course.plan):
            plan = self.dice.choice(sorted(self.plans))
        of_a_supervisor = kind in (EventKind.SIGN_OFF, EventKind.RESUME, EventKind.TAKE_OVER, EventKind.GIVE_BACK)
        actor = self.dice.choice(SUPERVISORS if of_a_supervisor else (STUDENT, STUDENT, STUDENT, *SUPERVISORS))
        not_checked = self.dice.choice(list(NotChecked)) if self.chance(self.luck.not_checked) else None
        self.events.append(
            CourseEvent(
                id=f"e{len(self.events) + 1}",
                kind=kind,
                actor=actor,
                plan=plan,
                canal=canal,
                node=node,
                body=body,
                not_checked=not_checked,
            )
        )

    def chance(self, share: float) -> bool:
        return self.dice.random() < share

    # --- what is told of each kind ---

    def canal(self, course: Course) -> str:
        names = sorted(course.canals)
        return self.dice.choice([*names, *names, *names, NO_CANAL, ""]) if names else NO_CANAL

    def sometimes(self, course: Course, *states: CanalState) -> str:
        """A canal in one of the states where there is one, else any."""
        fitting = sorted(name for name, canal in course.canals.items() if canal.state in states)
        return self.dice.choice(fitting) if fitting and self.chance(0.9) else self.canal(course)

    def one_of(self, kind: EventKind) -> str:
        ids = [event.id for event in self.events if event.kind is kind]
        return self.dice.choice([*ids, "e0"])


def _asked_for(course: Course, dice: Random) -> EventKind:
    """What would most likely come next."""
    states = {canal.state for canal in course.canals.values()}
    due = [EventKind.STEP] * 6
    if course.visit.closed:
        due += [EventKind.REOPEN] * 12
    if course.visit.words_due or CanalState.HOLD_POINT in states:
        due += [EventKind.SIGN_OFF] * 4
    if course.halted_by or {CanalState.PAUSED, CanalState.TO_CHECK} & states:
        due += [EventKind.RESUME] * 6
    if CanalState.PAST_STOP in states:
        due += [EventKind.ANSWER] * 6
    if course.revoked_by or CanalState.TO_PLAN in states:
        due += [EventKind.REPLAN] * 4
    if any(canal.word for canal in course.canals.values()):
        due += [EventKind.STRUCK] * (dice.random() < PUT_RIGHT_SHARE)
    if course.visit.clinic and course.visit.dam != "on":
        due += [EventKind.DAM] * 6
    if course.visit.clinic and not course.visit.on_site:
        due += [EventKind.ON_SITE] * 6
    return dice.choice(due)


def _step(drawn: Drawn, course: Course) -> Told:
    name = drawn.sometimes(course, CanalState.OPEN)
    canal = course.canals.get(name)
    node = canal.walk.node if canal else None
    if canal is None or not isinstance(node, Do):
        return name, "no-such-step", {"exit": "done"}
    hoped_for = next((exit_ for exit_ in HOPED_FOR if exit_ in node.exits), None)
    if node.action is Action.GAUGE:
        hoped_for = expected_exit(node)  # of some is hoped that they stay short
    shown = {"image_id": drawn.dice.choice(IMAGES)} if node.action is Action.IMAGE else {}
    if hoped_for and not drawn.chance(drawn.luck.not_hoped_for):
        return name, node.id, {"exit": str(hoped_for), **shown}
    exits = [*sorted(node.exits), *sorted(node.exits), "sideways"]
    return name, node.id, {"exit": str(drawn.dice.choice(exits)), **shown, **_depth(drawn, canal, node)}


def _depth(drawn: Drawn, canal: CanalCourse, node: Do) -> dict[str, Any]:
    stop_um = canal.walk.stop_um()
    if stop_um is None or not {Exit.REACHED, Exit.SHORT} & node.exits.keys():
        return {}
    return {"stop_um": stop_um, "depth_um": max(0, stop_um - drawn.dice.randint(-PAST_UM, SHORT_OF_UM))}


def _sign_off(drawn: Drawn, course: Course) -> Told:
    as_hoped = not drawn.chance(drawn.luck.not_hoped_for)
    exit_ = "approved" if as_hoped else drawn.dice.choice(["approved", "approved", "returned"])
    due = course.visit.words_due
    if due and drawn.chance(0.5):
        return "", drawn.dice.choice([*due, CHECK, RENEW]), {"exit": exit_}
    name = drawn.sometimes(course, CanalState.HOLD_POINT)
    canal = course.canals.get(name)
    return name, canal.walk.at if canal else CHECK, {"exit": exit_}


def _answer(drawn: Drawn, course: Course) -> Told:
    name = drawn.sometimes(course, CanalState.PAST_STOP)
    canal = course.canals.get(name)
    asks = canal.asked_by if canal and drawn.chance(0.9) else "e1"
    return name, "", {"asks": asks or "", "cause": drawn.dice.choice(["stop_moved", "tip_wet"])}


def _resume(drawn: Drawn, course: Course) -> Told:
    if course.halted_by and drawn.chance(0.7):
        ends = sorted(course.emergencies.halting)
        body: dict[str, Any] = {"ends": drawn.dice.choice([ends, ends[:1], []])}
        return "", "", body | ({"keep_saline": True} if drawn.chance(0.3) else {})
    name = drawn.sometimes(course, CanalState.PAUSED, CanalState.TO_CHECK, CanalState.PAST_STOP)
    canal = course.canals.get(name)
    nodes = sorted(canal.walk.sheet.nodes) if canal else []
    return name, drawn.dice.choice(nodes) if nodes and drawn.chance(0.2) else "", {}


def _emergency(drawn: Drawn, course: Course) -> Told:
    before = [event.id for event in drawn.events[-2:]] + [f"e{len(drawn.events) + 2}"]
    return drawn.dice.choice([drawn.canal(course), ""]), "", {"what": drawn.dice.choice(WHAT), "before": before}


def _corrected(drawn: Drawn, course: Course) -> Told:
    what = drawn.dice.choice([*WHAT, "", None])
    return "", "", {"corrects": drawn.one_of(EventKind.EMERGENCY), "what": what}


def _struck(drawn: Drawn, course: Course) -> Told:
    """By turns a reading, an image, an image that belongs to another canal."""
    number = len(drawn.events) % 3
    moved = {"moved_to": drawn.dice.choice([NO_CANAL, drawn.canal(course)])} if number == 0 else {}
    what = "length" if number == 1 else "image"
    given = sorted(name for name, canal in course.canals.items() if canal.word)
    name = drawn.dice.choice(given) if given and drawn.chance(0.5) else drawn.canal(course)
    return name, "", {"what": what, "struck": drawn.dice.choice(IMAGES), "why": "wrong_canal", **moved}


def _reopen(drawn: Drawn, course: Course) -> Told:
    names = [name for name in sorted(course.canals) if drawn.chance(0.9)]
    gone = [{"canal": name, "reference_point": "DB cusp"} for name in names if drawn.chance(0.1)]
    in_the_room = drawn.dice.choice([*SUPERVISORS, ""])
    body = {"as_left": names, "found": gone, "protected": drawn.chance(0.7)}
    return "", "", body | ({"supervisor_id": in_the_room} if in_the_room else {})


def _release(drawn: Drawn, course: Course) -> Told:
    left_out = [name for name in sorted(course.canals) if drawn.chance(0.2)]
    return "", "", {"not_released": [{"canal": name, "remark": "Later.", "joins": ""} for name in left_out]}


def _replan(drawn: Drawn, course: Course) -> Told:
    replaces = course.plan if drawn.chance(0.9) else "another"
    return "", "", {"replaces": replaces}


def _undo(drawn: Drawn, course: Course) -> Told:
    undone = drawn.dice.choice(drawn.events[-4:])
    return undone.canal, "", {"undoes": undone.id}


def _inspected(drawn: Drawn, course: Course) -> Told:
    return drawn.canal(course), "", {"instrument": "25/04", "found": drawn.dice.choice(["whole", "discarded"])}


def _of_a_canal(**body: Any) -> Callable[[Drawn, Course], Told]:
    return lambda drawn, course: (drawn.canal(course), "", body)


def _of_the_tooth(**choices: list[Any]) -> Callable[[Drawn, Course], Told]:
    return lambda drawn, course: ("", "", {name: drawn.dice.choice(values) for name, values in choices.items()})


_TELL: Mapping[EventKind, Callable[[Drawn, Course], Told]] = {
    EventKind.STEP: _step,
    EventKind.ANSWER: _answer,
    EventKind.READING: _of_a_canal(),
    EventKind.SIGN_OFF: _sign_off,
    EventKind.INSPECTED: _inspected,
    EventKind.TURN: _of_a_canal(),
    EventKind.PAUSE: _of_a_canal(reason="Unsure."),
    EventKind.EMERGENCY: _emergency,
    EventKind.CORRECTED: _corrected,
    EventKind.RESUME: _resume,
    EventKind.CLOSE: _of_the_tooth(access_sealed=[True, False]),
    EventKind.REOPEN: _reopen,
    EventKind.REPLAN: _replan,
    EventKind.REVOKED: _of_the_tooth(reason=["Withdrawn."]),
    EventKind.RELEASE: _release,
    EventKind.ASK: _of_a_canal(note="Please look."),
    EventKind.COME: _of_a_canal(note=""),
    EventKind.WANTED: _of_a_canal(note=""),
    EventKind.TAKE_OVER: _of_the_tooth(),
    EventKind.GIVE_BACK: _of_the_tooth(),
    EventKind.STRUCK: _struck,
    EventKind.ON_SITE: _of_the_tooth(supervisor_id=[*SUPERVISORS, ""]),
    EventKind.DAM: _of_the_tooth(state=["on", "on", "on", "off", "leaking"]),
    EventKind.IMAGE: _of_a_canal(kind="gauging", image_id=IMAGES[0]),
    EventKind.IRRIGATED: _of_a_canal(irrigant="saline", volume_ml=1.0),
    EventKind.NOTE: _of_a_canal(text="Seen under the microscope."),
    EventKind.UNDO: _undo,
}
