"""Courses drawn by a seed: mostly what the state of the work asks for, now and then anything anybody could tell."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from random import Random
from typing import Literal

from cases.domain.events import payloads as p
from cases.domain.events.event import CourseEvent
from cases.domain.events.kinds import EventKind, NotChecked
from cases.domain.events.payloads import EventPayload
from cases.domain.events.visit_payloads import ClosePayload, DamPayload, Found, OnSitePayload, ReopenPayload
from cases.domain.progress.canal_progress import CanalProgress, CanalState
from cases.domain.progress.case_state import CaseState, Sheets
from cases.domain.progress.course import fold
from cases.domain.progress.visit import CHECK, RENEW
from cases.domain.struck import StruckWhy
from planning.lengths.readings import ConfirmingImage
from planning.run_sheet.graph import Action, Exit, Step
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
"""So often an image is put right just after the sign-off on it; more often no canal would come to its end."""
WHAT: tuple[p.WhatHappened, ...] = ("sudden_bleeding", "instrument_separated", "hypochlorite_accident")

ONE_IN_THREE = 1 / 3
READING = ConfirmingImage(reference_point="DB cusp tip", set_mm=18, tip_short_mm=0)

Told = tuple[str, str, EventPayload]
"""Canal, step, payload."""


@dataclass(frozen=True, slots=True)
class Luck:
    """How often something is not as it was asked for."""

    anything: float
    """Any kind of event, whatever the state of the work."""
    not_hoped_for: float
    """A step is left by any of its exits."""
    by_another_plan: float
    not_checked: float


def dice(seed: str) -> Random:
    """The same draws for the same seed."""
    return Random(seed)


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

    def course(self) -> CaseState:
        return fold(self.plans, self.events, setting=self.setting)

    def draw(self, count: int) -> None:
        self._happens(EventKind.REPLAN, CaseState(visit=self.course().visit), sorted(self.plans)[0])
        while len(self.events) < count:
            course = self.course()
            kind = (
                self.dice.choice(list(EventKind)) if self.chance(self.luck.anything) else _asked_for(course, self.dice)
            )
            self._happens(kind, course, course.plan)

    def _happens(self, kind: EventKind, course: CaseState, plan: str) -> None:
        canal, node, payload = _TELL[kind](self, course)
        if self.chance(self.luck.by_another_plan) or (kind is EventKind.REPLAN and course.plan):
            plan = self.dice.choice(sorted(self.plans))
        of_a_supervisor = kind in (EventKind.SIGN_OFF, EventKind.RESUME, EventKind.TAKE_OVER, EventKind.GIVE_BACK)
        actor = self.dice.choice(SUPERVISORS if of_a_supervisor else (STUDENT, STUDENT, STUDENT, *SUPERVISORS))
        not_checked = self.dice.choice(list(NotChecked)) if self.chance(self.luck.not_checked) else None
        self.events.append(
            CourseEvent(
                id=f"e{len(self.events) + 1}",
                actor=actor,
                plan=plan,
                canal=canal,
                node=node,
                payload=payload,
                not_checked=not_checked,
            )
        )

    def chance(self, share: float) -> bool:
        return self.dice.random() < share

    # --- what is told of each kind ---

    def canal(self, course: CaseState) -> str:
        names = sorted(course.canals)
        return self.dice.choice([*names, *names, *names, NO_CANAL, ""]) if names else NO_CANAL

    def sometimes(self, course: CaseState, *states: CanalState) -> str:
        """A canal in one of the states where there is one, else any."""
        fitting = sorted(name for name, canal in course.canals.items() if canal.state in states)
        return self.dice.choice(fitting) if fitting and self.chance(0.9) else self.canal(course)

    def one_of(self, kind: EventKind) -> str:
        ids = [event.id for event in self.events if event.kind is kind]
        return self.dice.choice([*ids, "e0"])


def _asked_for(course: CaseState, dice: Random) -> EventKind:
    """What would most likely come next."""
    states = {canal.state for canal in course.canals.values()}
    due = [EventKind.STEP] * 6
    if course.visit.closed:
        due += [EventKind.REOPEN] * 12
    if course.visit.sign_offs_due or CanalState.HOLD_POINT in states:
        due += [EventKind.SIGN_OFF] * 4
    if course.halted_by or {CanalState.PAUSED, CanalState.TO_CHECK} & states:
        due += [EventKind.RESUME] * 6
    if CanalState.PAST_STOP in states:
        due += [EventKind.ANSWER] * 6
    if course.revoked_by or CanalState.TO_PLAN in states:
        due += [EventKind.REPLAN] * 4
    if any(canal.sign_off for canal in course.canals.values()):
        due += [EventKind.STRUCK] * (dice.random() < PUT_RIGHT_SHARE)
    if course.visit.clinic and course.visit.dam != "on":
        due += [EventKind.DAM] * 6
    if course.visit.clinic and not course.visit.on_site:
        due += [EventKind.ON_SITE] * 6
    return dice.choice(due)


def _step(drawn: Drawn, course: CaseState) -> Told:
    name = drawn.sometimes(course, CanalState.OPEN)
    canal = course.canals.get(name)
    node = canal.walk.node if canal else None
    if canal is None or not isinstance(node, Step):
        return name, "no-such-step", p.StepPayload(exit=Exit.DONE)
    hoped_for = next((exit_ for exit_ in HOPED_FOR if exit_ in node.exits), None)
    if node.action is Action.GAUGE:
        hoped_for = expected_exit(node)  # of some is hoped that they stay short
    image_id = drawn.dice.choice(IMAGES) if node.action is Action.IMAGE else None
    if hoped_for and not drawn.chance(drawn.luck.not_hoped_for):
        return name, node.id, p.StepPayload(exit=hoped_for, image_id=image_id)
    # Now and then an exit that the step has not.
    exit_ = drawn.dice.choice([*sorted(node.exits), *sorted(node.exits), drawn.dice.choice(list(Exit))])
    stop_um, depth_um = _depth(drawn, canal, node)
    return name, node.id, p.StepPayload(exit=exit_, image_id=image_id, stop_um=stop_um, depth_um=depth_um)


def _depth(drawn: Drawn, canal: CanalProgress, node: Step) -> tuple[int | None, int | None]:
    """The stop that is shown, and how deep the instrument went; neither of a step without a depth."""
    stop_um = canal.walk.stop_um()
    if stop_um is None or not {Exit.REACHED, Exit.SHORT} & node.exits.keys():
        return None, None
    return stop_um, max(0, stop_um - drawn.dice.randint(-PAST_UM, SHORT_OF_UM))


def _sign_off(drawn: Drawn, course: CaseState) -> Told:
    as_hoped = not drawn.chance(drawn.luck.not_hoped_for)
    exit_: p.SignOffExit = "approved"
    if not as_hoped and drawn.chance(ONE_IN_THREE):
        exit_ = "returned"
    due = course.visit.sign_offs_due
    if due and drawn.chance(0.5):
        return "", drawn.dice.choice([*due, CHECK, RENEW]), p.SignOffPayload(exit=exit_)
    name = drawn.sometimes(course, CanalState.HOLD_POINT)
    canal = course.canals.get(name)
    return name, canal.walk.at if canal else CHECK, p.SignOffPayload(exit=exit_)


def _answer(drawn: Drawn, course: CaseState) -> Told:
    name = drawn.sometimes(course, CanalState.PAST_STOP)
    canal = course.canals.get(name)
    asks = canal.asked_by if canal and drawn.chance(0.9) else "e1"
    return name, "", p.AnswerPayload(asks=asks or "", cause="stop_moved" if drawn.chance(0.5) else "tip_wet")


def _resume(drawn: Drawn, course: CaseState) -> Told:
    if course.halted_by and drawn.chance(0.7):
        ends = sorted(course.emergencies.halting)
        ended = drawn.dice.choice([ends, ends[:1], []])
        return "", "", p.ResumePayload(reason="Seen.", ends=tuple(ended), keep_saline=drawn.chance(0.3))
    name = drawn.sometimes(course, CanalState.PAUSED, CanalState.TO_CHECK, CanalState.PAST_STOP)
    canal = course.canals.get(name)
    nodes = sorted(canal.walk.sheet.nodes) if canal else []
    return name, drawn.dice.choice(nodes) if nodes and drawn.chance(0.2) else "", p.ResumePayload(reason="Seen.")


def _emergency(drawn: Drawn, course: CaseState) -> Told:
    before = (*(event.id for event in drawn.events[-2:]), f"e{len(drawn.events) + 2}")
    payload = p.EmergencyPayload(what=drawn.dice.choice(WHAT), before=before)
    return drawn.dice.choice([drawn.canal(course), ""]), "", payload


def _corrected(drawn: Drawn, course: CaseState) -> Told:
    what = drawn.dice.choice([*WHAT, None, None])
    return "", "", p.CorrectedPayload(corrects=drawn.one_of(EventKind.EMERGENCY), what=what)


def _struck(drawn: Drawn, course: CaseState) -> Told:
    """By turns a reading, an image, an image that belongs to another canal."""
    number = len(drawn.events) % 3
    moved_to = drawn.dice.choice([NO_CANAL, drawn.canal(course)]) if number == 0 else None
    signed = sorted(name for name, canal in course.canals.items() if canal.sign_off)
    name = drawn.dice.choice(signed) if signed and drawn.chance(0.5) else drawn.canal(course)
    payload = p.StruckPayload(
        what="length" if number == 1 else "image",
        struck=drawn.dice.choice(IMAGES),
        why=StruckWhy.WRONG_CANAL,
        moved_to=moved_to,
    )
    return name, "", payload


def _reopen(drawn: Drawn, course: CaseState) -> Told:
    names = [name for name in sorted(course.canals) if drawn.chance(0.9)]
    gone = [name for name in sorted(course.canals) if drawn.chance(0.1)]
    payload = ReopenPayload(
        as_left=tuple(name for name in names if name not in gone),
        found=tuple(Found(canal=name, reference_there=False, reference_point="DB cusp") for name in gone),
        protected=drawn.chance(0.7),
        supervisor_id=drawn.dice.choice([*SUPERVISORS, ""]),
    )
    return "", "", payload


def _release(drawn: Drawn, course: CaseState) -> Told:
    left_out = [name for name in sorted(course.canals) if drawn.chance(0.2)]
    return "", "", p.ReleasePayload(not_released=tuple(p.NotReleased(canal=each, remark="Later.") for each in left_out))


def _replan(drawn: Drawn, course: CaseState) -> Told:
    replaces = course.plan if drawn.chance(0.9) else "another"
    return "", "", p.ReplanPayload(replaces=replaces)


def _undo(drawn: Drawn, course: CaseState) -> Told:
    undone = drawn.dice.choice(drawn.events[-4:])
    return undone.canal, "", p.UndoPayload(undoes=undone.id)


def _inspected(drawn: Drawn, course: CaseState) -> Told:
    verdict: Literal["whole", "discarded"] = "discarded" if drawn.chance(0.5) else "whole"
    return drawn.canal(course), "", p.InspectedPayload(instrument="25/04", found=verdict)


def _of_a_canal(payload: EventPayload) -> Callable[[Drawn, CaseState], Told]:
    return lambda drawn, course: (drawn.canal(course), "", payload)


def _of_the_tooth(*payloads: EventPayload) -> Callable[[Drawn, CaseState], Told]:
    """One of these."""
    return lambda drawn, course: ("", "", drawn.dice.choice(payloads))


_TELL: Mapping[EventKind, Callable[[Drawn, CaseState], Told]] = {
    EventKind.STEP: _step,
    EventKind.ANSWER: _answer,
    EventKind.READING: _of_a_canal(p.ReadingPayload(taken=READING)),
    EventKind.SIGN_OFF: _sign_off,
    EventKind.INSPECTED: _inspected,
    EventKind.TURN: _of_a_canal(p.TurnPayload()),
    EventKind.PAUSE: _of_a_canal(p.PausePayload(reason="Unsure.")),
    EventKind.EMERGENCY: _emergency,
    EventKind.CORRECTED: _corrected,
    EventKind.RESUME: _resume,
    EventKind.CLOSE: _of_the_tooth(ClosePayload(access_sealed=True), ClosePayload(access_sealed=False)),
    EventKind.REOPEN: _reopen,
    EventKind.REPLAN: _replan,
    EventKind.REVOKED: _of_the_tooth(p.RevokedPayload(reason="Withdrawn.")),
    EventKind.RELEASE: _release,
    EventKind.ASK: _of_a_canal(p.AskPayload(note="Please look.")),
    EventKind.COME: _of_a_canal(p.ComePayload()),
    EventKind.WANTED: _of_a_canal(p.WantedPayload()),
    EventKind.TAKE_OVER: _of_the_tooth(p.TakeOverPayload()),
    EventKind.GIVE_BACK: _of_the_tooth(p.GiveBackPayload()),
    EventKind.STRUCK: _struck,
    EventKind.ON_SITE: _of_the_tooth(*(OnSitePayload(supervisor_id=who) for who in (*SUPERVISORS, ""))),
    EventKind.DAM: _of_the_tooth(*[DamPayload(state="on")] * 3, DamPayload(state="off"), DamPayload(state="leaking")),
    EventKind.IMAGE: _of_a_canal(p.ImagePayload(image_id=IMAGES[0])),
    EventKind.IRRIGATED: _of_a_canal(p.IrrigatedPayload(irrigant="saline", volume_ml=1.0)),
    EventKind.NOTE: _of_a_canal(p.NotePayload(text="Seen under the microscope.")),
    EventKind.UNDO: _undo,
}
