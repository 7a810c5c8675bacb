"""What can be recorded at the chair."""

from __future__ import annotations

from enum import StrEnum


class EventKind(StrEnum):
    STEP = "step"
    """A step was left by one of its exits; the body says which, how deep, and the stop that was shown."""
    ANSWER = "answer"
    """Why an instrument went past its stop: the question that such a step opens."""
    READING = "reading"
    """A length was taken: the canal waits until its stops are computed from it."""
    SIGN_OFF = "sign_off"
    """A supervisor answered a hold point."""
    INSPECTED = "inspected"
    """An instrument was looked at: whole, or discarded."""
    TURN = "turn"
    """The hand went over to another canal."""
    PAUSE = "pause"
    """Work on one canal stands still."""
    EMERGENCY = "emergency"
    """Work on the tooth stands still."""
    CORRECTED = "corrected"
    """What an emergency was said to be is said anew, or that it was not so; the work stands still as before."""
    RESUME = "resume"
    """A supervisor lets the work go on."""
    CLOSE = "close"
    """The visit ends."""
    REOPEN = "reopen"
    """The next visit begins; the body says which canals were found as they were left."""
    REPLAN = "replan"
    """A plan is in force from here on, the first one too: it takes over where the work stands."""
    REVOKED = "revoked"
    """The approval of the plan in force was withdrawn: nothing is worked until a plan is approved again."""
    RELEASE = "release"
    """A supervisor decided on a plan: which of its canals may not be worked yet."""
    ASK = "ask"
    """The student asks for a supervisor's word."""
    COME = "come"
    """A supervisor answers: to the chair."""
    WANTED = "wanted"
    """A supervisor asks to be shown something: an image of a canal."""
    TAKE_OVER = "take_over"
    """A supervisor works the case from here on, beside or instead of its student."""
    GIVE_BACK = "give_back"
    """The supervisor who took over works it no more."""
    STRUCK = "struck"
    """A reading that the plan may rest on was struck: its canal waits until its stops are computed anew. Or an image
    was struck, or put to another canal."""
    ON_SITE = "on_site"
    """Which licensed clinician is in the room for this visit."""
    DAM = "dam"
    """The dam is on, off or leaking."""
    IMAGE = "image"
    """An image was taken; the image itself may still be on the phone."""
    IRRIGATED = "irrigated"
    """Irrigated beside what the order of work asks for."""
    NOTE = "note"
    UNDO = "undo"
    """Names an earlier event that does not count; both stay."""


class NotChecked(StrEnum):
    """What of an event could not be checked when it came in: it is kept and marked, never refused for that."""

    PLAN = "plan"
    """The plan it names is not here."""
    DEPTH = "depth"
    """Deeper than any tooth."""
    LENGTH = "length"
    """No reading was made of the length."""
    POINT = "point"
    """The new reference point was not taken over."""
    ROOM_LEFT = "room_left"
    """Whoever was in the room supervised here once and is not on the programme's list any more."""
    ROOM = "room"
    """Whoever was named as in the room is not known as a supervisor here."""


BY_SERVER = frozenset({EventKind.STRUCK, EventKind.REPLAN, EventKind.REVOKED, EventKind.RELEASE})
"""Recorded by the program itself, never by a device."""
OF_THE_VISIT = frozenset({EventKind.CLOSE, EventKind.REOPEN, EventKind.ON_SITE, EventKind.DAM})
"""Concern the room and the whole tooth, whatever plan was on the screen."""
NEVER_UNDONE = frozenset(
    {
        EventKind.SIGN_OFF,
        EventKind.EMERGENCY,
        EventKind.CORRECTED,
        EventKind.RESUME,
        EventKind.CLOSE,
        EventKind.REOPEN,
        EventKind.REPLAN,
        EventKind.REVOKED,
        EventKind.RELEASE,
        EventKind.UNDO,
        EventKind.READING,
        EventKind.ANSWER,
        EventKind.COME,
        EventKind.STRUCK,
        EventKind.TAKE_OVER,
        EventKind.GIVE_BACK,
        EventKind.ON_SITE,
        EventKind.DAM,
    }
)
"""Halts, answers and plans are answered by something new, never taken back."""
MOVES_NOTHING = frozenset(
    {
        EventKind.NOTE,
        EventKind.INSPECTED,
        EventKind.IMAGE,
        EventKind.IRRIGATED,
        EventKind.WANTED,
    }
)
"""Kept and shown; where the work stands is the same after them."""
BESIDE = MOVES_NOTHING | {EventKind.TURN, EventKind.ASK}
"""No step rests on them: they stand in no undo's way, and may be taken back out of turn."""
WORD_ON_A_CANAL = frozenset({EventKind.SIGN_OFF, EventKind.RESUME})
"""Answers what was done in the canal before: that is not taken back from under it any more."""
