"""What the program calls by short names, in plain words."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from cases.domain.events.kinds import NotChecked
from cases.domain.events.payloads import PastStopCause, WhatHappened
from cases.domain.progress.out_of_course import OutOfCourse
from planning.foundation.quantities import in_mm

WHY = {
    OutOfCourse.OTHER_PLAN: "recorded on another version of the plan",
    OutOfCourse.NO_CANAL: "the plan has no such canal",
    OutOfCourse.CLOSED: "the visit was closed",
    OutOfCourse.HALTED: "the work was halted",
    OutOfCourse.DAM_OFF: "the dam was not on",
    OutOfCourse.NOBODY_ON_SITE: "nobody was named in the room",
    OutOfCourse.APPROVAL_LAPSED: "the approval had lapsed",
    OutOfCourse.REVOKED: "the approval had been withdrawn",
    OutOfCourse.WITHHELD: "the canal was withheld",
    OutOfCourse.OTHER_STEP: "another step was due",
    OutOfCourse.NO_SUCH_EXIT: "the step has no such answer",
    OutOfCourse.NOTHING_ASKED: "nothing was asked",
    OutOfCourse.NOT_TO_UNDO: "it cannot be taken back",
    OutOfCourse.NOT_CHECKED: "what it says could not be checked",
    OutOfCourse.NOT_WORKING: "whoever told it did not work the case any more",
}
NOT_CHECKED = {
    NotChecked.PLAN: "the plan it was recorded on is not here",
    NotChecked.DEPTH: "it is deeper than any tooth",
    NotChecked.LENGTH: "no reading was made of the length",
    NotChecked.POINT: "the new reference point was not taken over",
    NotChecked.ROOM_LEFT: "who was in the room has left the programme's list since",
    NotChecked.ROOM: "who was named as in the room is not known here as a supervisor",
}
_CAUSE = {
    "stop_moved": "the stop had moved",
    "reference_changed": "the reference point has changed",
    "tip_bleeding": "blood on the tip",
    "tip_wet": "the tip is wet",
    "not_known": "not known",
}
_EMERGENCY = {
    "instrument_separated": "an instrument has separated",
    "perforation_suspected": "a perforation is suspected",
    "sudden_bleeding": "sudden bleeding",
    "sudden_pain_or_swelling": "sudden pain or swelling",
    "inhaled_or_swallowed": "something was inhaled or swallowed",
    "collapse": "the patient collapses",
    "splash_in_eye": "a splash in an eye",
    "splash_on_skin": "a splash on skin",
    "sharps_injury": "somebody was hurt by a sharp",
}
_ENTERED = {
    "LengthReading": "reading",
    "JunctionReading": "junction",
    "Marking": "marks on an image",
    "BendInSpace": "bend from two views",
    "ToothPlanVersion": "plan",
    "CautionOverride": "override of a caution",
}
_DONE = {
    "add": "added",
    "approve": "approved",
    "carry_over": "approved as before",
    "change": "changed",
    "combine": "kept",
    "correct_alias": "alias corrected",
    "mark": "kept",
    "move": "moved",
    "open": "opened",
    "override": "given",
    "propose": "made",
    "release": "released",
    "remove": "removed",
    "return": "returned",
    "revoke": "approval withdrawn",
    "strike": "struck",
    "submit": "submitted",
    "supersede": "set aside for another",
    "take": "taken",
    "take_up_again": "taken up again",
    "withdraw": "withdrawn",
}


def entered(subject: str, verb: str, canal: str) -> str:
    """A line of the change log as what was done: "MB1: reading taken"; `canal` may be empty."""
    what = f"{_ENTERED.get(subject, subject.lower())} {_DONE.get(verb, plain(verb))}"
    return f"{canal}: {what}" if canal else what


def irrigant(name: str) -> str:
    return name.upper() if name == "edta" else plain(name)


def plain(name: str) -> str:
    """A name of the program as words."""
    return str(name).replace("_", " ").replace("-", " ")


def millimetres(length_um: int | None) -> str:
    """A length as a sentence has it; empty for none."""
    return "" if length_um is None else f"{in_mm(length_um)} mm"


def cause(name: PastStopCause) -> str:
    return _CAUSE[name]


def emergency(name: WhatHappened) -> str:
    return _EMERGENCY.get(name, plain(name))


def read(taken: Mapping[str, Any]) -> tuple[str, str]:
    """How something was measured, and what was read."""
    named = ("tooth_mm", "set_mm", "tip_short_mm", "read_mm", "repeat_mm", "seen_mm", "from_terminus_mm")
    numbers = ", ".join(f"{plain(key.removesuffix('_mm'))} {taken[key]:g} mm" for key in named if taken.get(key))
    return plain(taken.get("method", "")), numbers


STRUCK_WHY = {
    "wrong_canal": "it is of another canal",
    "mistyped": "it was mistyped",
    "not_so": "it was not measured so",
}
_IMAGE_STRUCK_WHY = STRUCK_WHY | {"not_so": "it does not show what it was taken for"}


def put_right(why: str, moved_to: str | None) -> str:
    """What was done with an image that was a mistake."""
    if moved_to is None:
        return f"struck, {_IMAGE_STRUCK_WHY[why]}"
    return f"put to {moved_to or 'the whole tooth'}, where it belongs"
