"""What an event carries, by kind: sent by devices, kept as canonical text, folded and put into words as it is.

Payloads about a whole visit stand in `visit_payloads`: they check their fields against each other.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from cases.domain.events.visit_payloads import ClosePayload, DamPayload, OnSitePayload, ReopenPayload
from cases.domain.struck import StruckWhy
from planning.foundation.bounds import within
from planning.foundation.counts import at_most
from planning.lengths.readings import Reading
from planning.run_sheet.graph import Exit

PastStopCause = Literal["stop_moved", "reference_changed", "tip_bleeding", "tip_wet", "not_known"]
ImagePurpose = Literal["pre_operative", "length", "final_size", "cone", "final", "other"]
NoImage = Literal["no_sensor", "film", "image_elsewhere"]
SignOffExit = Literal["approved", "returned"]
WhatHappened = Literal[
    "instrument_separated",
    "perforation_suspected",
    "hypochlorite_accident",
    "sudden_bleeding",
    "sudden_pain_or_swelling",
    "inhaled_or_swallowed",
    "collapse",
    "splash_in_eye",
    "splash_on_skin",
    "sharps_injury",
]
WhatPauses = Literal["sensitivity", "normal_bleeding", "ledge_suspected", "not_sure", "other"]


@dataclass(frozen=True, slots=True, kw_only=True)
class StepPayload:
    """A step was left."""

    exit: Exit
    depth_um: Annotated[int, within("told_depth")] | None = None
    """Where the tip stopped, in whole micrometres from the reference point."""
    stop_um: Annotated[int, within("told_depth")] | None = None
    """The stop that the screen showed."""
    irrigant: str | None = None
    volume_ml: Annotated[float, within("irrigant_volume")] | None = None
    contact_s: Annotated[int, within("contact_time")] | None = None
    """How long the irrigant stayed, as the phone counted it; none where its clock could not be trusted."""
    image_id: str | None = None
    """The image that an image step took; it may still be on the phone."""
    no_image: NoImage | None = None
    """Why there is no image. An older phone sends neither; the hold point then says that the image is lacking."""
    together: str = ""
    """One exposure may show several canals: where no image of it is kept here, their steps share this id."""
    kind: Literal["step"] = "step"


@dataclass(frozen=True, slots=True, kw_only=True)
class AnswerPayload:
    """Why an instrument went past its stop."""

    asks: str
    """Id of the event that opened the question."""
    cause: PastStopCause
    """`stop_moved` lets the canal go on; anything else is for the supervisor."""
    kind: Literal["answer"] = "answer"


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingPayload:
    """A length was taken at the chair."""

    # Not `reading`: no field is named like its kind, or a refusal's path could not tell the two apart.
    taken: Reading
    kind: Literal["reading"] = "reading"


@dataclass(frozen=True, slots=True, kw_only=True)
class SignOffPayload:
    """A supervisor's sign-off at a hold point."""

    exit: SignOffExit
    despite_missing: bool = False
    """Approved although what the hold point asks for is not there; the reason says why."""
    reason: str = ""
    on_site: bool = False
    """Given on the student's phone with a one-time code; recorded by the server alone."""
    together: str = ""
    """Id shared by the sign-offs that a supervisor gave for several canals at once."""
    kind: Literal["sign_off"] = "sign_off"


@dataclass(frozen=True, slots=True, kw_only=True)
class InspectedPayload:
    """An instrument was looked at. One that is found whole after a discard is a new one."""

    instrument: str
    found: Literal["whole", "discarded"]
    why: str = ""
    kind: Literal["inspected"] = "inspected"


@dataclass(frozen=True, slots=True, kw_only=True)
class TurnPayload:
    """The hand went over to another canal."""

    kind: Literal["turn"] = "turn"


@dataclass(frozen=True, slots=True, kw_only=True)
class PausePayload:
    """This canal stands still until a supervisor lets it go on."""

    what: WhatPauses = "other"
    reason: str = ""
    kind: Literal["pause"] = "pause"


@dataclass(frozen=True, slots=True, kw_only=True)
class EmergencyPayload:
    """The whole tooth stands still."""

    what: WhatHappened
    note: str = ""
    before: Annotated[tuple[str, ...], at_most("events")] = ()
    """Ids of events that the teller had recorded before it and not sent yet. The emergency is sent first, and its halt
    does not stop what was done before it."""
    kind: Literal["emergency"] = "emergency"


@dataclass(frozen=True, slots=True, kw_only=True)
class CorrectedPayload:
    """An emergency is corrected. The tooth stands still until a supervisor resumes."""

    corrects: str
    """Id of the emergency."""
    what: WhatHappened | None = None
    """What it was instead; None: it was not so, a false alarm."""
    note: str = ""
    kind: Literal["corrected"] = "corrected"


@dataclass(frozen=True, slots=True, kw_only=True)
class ResumePayload:
    """A supervisor lets the work go on: one canal, or with no canal the tooth after an emergency."""

    reason: str
    keep_saline: bool = False
    """For the tooth: the work goes on, and irrigation stays with saline."""
    ends: Annotated[tuple[str, ...], at_most("events")] = ()
    """For the tooth: ids of the emergencies and corrections that the supervisor had seen. One that came later still
    halts the tooth. Empty: all are ended."""
    kind: Literal["resume"] = "resume"


@dataclass(frozen=True, slots=True, kw_only=True)
class ReplanPayload:
    """A plan is in force from here on."""

    replaces: str
    """Hash of the plan that was in force until now; the new plan's own hash where there was none."""
    kind: Literal["replan"] = "replan"


@dataclass(frozen=True, slots=True, kw_only=True)
class RevokedPayload:
    """The approval of the plan in force was withdrawn."""

    reason: str
    kind: Literal["revoked"] = "revoked"


@dataclass(frozen=True, slots=True, kw_only=True)
class NotReleased:
    """A canal that a supervisor's decision leaves out."""

    canal: str
    remark: str
    """Why; empty where only its partner was returned."""
    joins: str = ""
    """The returned canal that it joins with; empty where it was returned itself."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ReleasePayload:
    """A supervisor decided on the plan: every canal may be worked but these."""

    not_released: Annotated[tuple[NotReleased, ...], at_most("canals")]
    kind: Literal["release"] = "release"


@dataclass(frozen=True, slots=True, kw_only=True)
class AskPayload:
    """The student asks for a supervisor's sign-off."""

    note: str = ""
    together: str = ""
    """Id shared by what the student asked for several canals at once."""
    kind: Literal["ask"] = "ask"


@dataclass(frozen=True, slots=True, kw_only=True)
class ComePayload:
    """A supervisor comes to the chair before deciding."""

    note: str = ""
    kind: Literal["come"] = "come"


@dataclass(frozen=True, slots=True, kw_only=True)
class WantedPayload:
    """A supervisor asks to be shown something."""

    what: Literal["image"] = "image"
    note: str = ""
    kind: Literal["wanted"] = "wanted"


@dataclass(frozen=True, slots=True, kw_only=True)
class StruckPayload:
    """A reading or an image of the canal counts no more."""

    what: Literal["length", "junction", "image"]
    struck: str
    """Its id."""
    why: StruckWhy
    moved_to: str | None = None
    """Of an image: the canal it counts in instead, empty for the whole tooth; None: it counts for nothing."""
    kind: Literal["struck"] = "struck"


@dataclass(frozen=True, slots=True, kw_only=True)
class TakeOverPayload:
    """A supervisor works the case from here on."""

    kind: Literal["take_over"] = "take_over"


@dataclass(frozen=True, slots=True, kw_only=True)
class GiveBackPayload:
    """The supervisor who took over works it no more."""

    kind: Literal["give_back"] = "give_back"


@dataclass(frozen=True, slots=True, kw_only=True)
class ImagePayload:
    """An image was taken. No event waits for the image itself: it is uploaded separately."""

    image_id: str
    purpose: ImagePurpose = "other"
    kind: Literal["image"] = "image"


@dataclass(frozen=True, slots=True, kw_only=True)
class IrrigatedPayload:
    """The canal was irrigated once more than the order of work asks for."""

    irrigant: str
    volume_ml: Annotated[float, within("irrigant_volume")]
    contact_s: Annotated[int, within("contact_time")] | None = None
    kind: Literal["irrigated"] = "irrigated"


@dataclass(frozen=True, slots=True, kw_only=True)
class NotePayload:
    text: str
    kind: Literal["note"] = "note"


@dataclass(frozen=True, slots=True, kw_only=True)
class UndoPayload:
    """The teller takes back an entry of their own on the canal."""

    undoes: str
    """Id of that event."""
    kind: Literal["undo"] = "undo"


EventPayload = (
    StepPayload
    | AnswerPayload
    | ReadingPayload
    | SignOffPayload
    | InspectedPayload
    | TurnPayload
    | PausePayload
    | EmergencyPayload
    | CorrectedPayload
    | ResumePayload
    | ClosePayload
    | ReopenPayload
    | ReplanPayload
    | RevokedPayload
    | ReleasePayload
    | AskPayload
    | ComePayload
    | WantedPayload
    | StruckPayload
    | TakeOverPayload
    | GiveBackPayload
    | OnSitePayload
    | DamPayload
    | ImagePayload
    | IrrigatedPayload
    | NotePayload
    | UndoPayload
)
