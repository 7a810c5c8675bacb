"""What can be recorded at the chair."""

from __future__ import annotations

from enum import StrEnum


class EventKind(StrEnum):
    STEP = "step"
    """A step was left by one of its exits; the body says which, and how deep."""
    READING = "reading"
    """A length was taken."""
    SIGN_OFF = "sign_off"
    """A supervisor answered a hold point."""
    PAUSE = "pause"
    """Work on one canal stands still."""
    EMERGENCY = "emergency"
    """Work on the tooth stands still."""
    RESUME = "resume"
    """A supervisor lets the work go on."""
    CLOSE = "close"
    """The visit ends."""
    NOTE = "note"
    UNDO = "undo"
    """Names an earlier event that does not count; both stay."""


BY_SUPERVISOR = frozenset({EventKind.SIGN_OFF, EventKind.RESUME})
NEVER_UNDONE = frozenset(
    {EventKind.SIGN_OFF, EventKind.PAUSE, EventKind.EMERGENCY, EventKind.RESUME, EventKind.UNDO, EventKind.READING}
)
