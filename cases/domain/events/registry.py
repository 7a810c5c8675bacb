"""Every kind of event in one table: what it carries, who may tell it, how it is taken back.

Server and phone are held to `tests/shared/who-tells.json` and `taken-back.json`.

The fold (`progress/course`) says what an event does to the work, `record/sentences` how the record puts it. Both match
on the payload's class, and a type checker names a kind that one of them leaves out.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from cases.domain.events import payloads as p
from cases.domain.events import visit_payloads as visit
from cases.domain.events.kinds import EventKind


class Part(StrEnum):
    """What somebody is to one case."""

    OWN_STUDENT = "own_student"
    OTHER_STUDENT = "other_student"
    LOOKING_IN = "looking_in"
    """A supervisor of the programme who does not work the case."""
    TOOK_OVER = "took_over"
    """A supervisor who said so and has not given it back."""
    COORDINATOR = "coordinator"
    STRANGER = "stranger"


Parts = frozenset[Part]
NOBODY: Parts = frozenset()
"""The program itself records it."""
WORKING = frozenset({Part.OWN_STUDENT, Part.TOOK_OVER})
SUPERVISING = frozenset({Part.LOOKING_IN, Part.TOOK_OVER})
ANY_OF_THEM = WORKING | SUPERVISING


class Undo(StrEnum):
    """When the person who recorded an event may take it back."""

    NEVER = "never"
    """Something new answers it: a halt is resumed, a plan is replaced."""
    LAST = "last"
    """Only while it is their last entry on the canal: later entries rest on it."""
    ANY_TIME = "any_time"
    """At any time and in any order: no other entry rests on it."""


@dataclass(frozen=True, slots=True)
class EventRules:
    payload: type[p.EventPayload]
    told_by: Parts
    undo: Undo = Undo.NEVER


EVENTS: Mapping[EventKind, EventRules] = {
    EventKind.STEP: EventRules(p.StepPayload, WORKING, Undo.LAST),
    EventKind.ANSWER: EventRules(p.AnswerPayload, WORKING),
    EventKind.READING: EventRules(p.ReadingPayload, WORKING),
    EventKind.SIGN_OFF: EventRules(p.SignOffPayload, SUPERVISING),
    EventKind.INSPECTED: EventRules(p.InspectedPayload, WORKING, Undo.ANY_TIME),
    EventKind.TURN: EventRules(p.TurnPayload, WORKING, Undo.ANY_TIME),
    EventKind.PAUSE: EventRules(p.PausePayload, ANY_OF_THEM, Undo.LAST),
    EventKind.EMERGENCY: EventRules(p.EmergencyPayload, ANY_OF_THEM),
    EventKind.CORRECTED: EventRules(p.CorrectedPayload, ANY_OF_THEM),
    EventKind.RESUME: EventRules(p.ResumePayload, SUPERVISING),
    EventKind.CLOSE: EventRules(visit.ClosePayload, WORKING),
    EventKind.REOPEN: EventRules(visit.ReopenPayload, WORKING),
    EventKind.REPLAN: EventRules(p.ReplanPayload, NOBODY),
    EventKind.REVOKED: EventRules(p.RevokedPayload, NOBODY),
    EventKind.RELEASE: EventRules(p.ReleasePayload, NOBODY),
    EventKind.ASK: EventRules(p.AskPayload, WORKING, Undo.ANY_TIME),
    EventKind.COME: EventRules(p.ComePayload, SUPERVISING),
    EventKind.WANTED: EventRules(p.WantedPayload, SUPERVISING, Undo.ANY_TIME),
    EventKind.STRUCK: EventRules(p.StruckPayload, NOBODY),
    EventKind.TAKE_OVER: EventRules(p.TakeOverPayload, SUPERVISING),
    EventKind.GIVE_BACK: EventRules(p.GiveBackPayload, frozenset({Part.TOOK_OVER})),
    EventKind.ON_SITE: EventRules(visit.OnSitePayload, WORKING),
    EventKind.DAM: EventRules(visit.DamPayload, WORKING),
    EventKind.IMAGE: EventRules(p.ImagePayload, WORKING, Undo.ANY_TIME),
    EventKind.IRRIGATED: EventRules(p.IrrigatedPayload, WORKING, Undo.ANY_TIME),
    EventKind.NOTE: EventRules(p.NotePayload, ANY_OF_THEM, Undo.ANY_TIME),
    # Anybody who tells something: an undo can only name an entry of the same person.
    EventKind.UNDO: EventRules(p.UndoPayload, ANY_OF_THEM),
}

MAY_TELL: Mapping[EventKind, Parts] = {kind: rules.told_by for kind, rules in EVENTS.items()}


def told_by(parts: Parts) -> frozenset[EventKind]:
    """The kinds that exactly these parts may tell."""
    return frozenset(kind for kind, allowed in MAY_TELL.items() if allowed == parts)


BY_SERVER = told_by(NOBODY)
"""Recorded by the program itself, never by a device."""
OF_WORK = told_by(WORKING)
"""Told only by somebody who works the case."""
BY_SUPERVISOR = told_by(SUPERVISING)
"""Told only by supervisors, whoever works the case."""
