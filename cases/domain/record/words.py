"""What happened, in plain words, and why an event moved nothing."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from cases.domain.events.kinds import EventKind, NotChecked
from cases.domain.progress.course import OutOfCourse
from cases.domain.record import of_visits
from cases.domain.record.story import CaseHistory, RecordedEvent
from planning.foundation.quantities import in_mm
from planning.run_sheet.graph import Action, Do

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
_LEFT = {
    "done": "done",
    "reached": "at its stop",
    "short": "stopped short",
    "blocked": "does not pass",
    "approved": "approved",
    "returned": "returned",
}
_STEP = {
    Action.INSTRUMENT: "{instrument}",
    Action.RECAPITULATE: "{instrument} to recapitulate",
    Action.GAUGE: "{instrument} to gauge",
    Action.IRRIGATE: "Irrigated",
    Action.IMAGE: "Image",
    Action.SIGN_OFF: "Hold point",
    Action.FIT_CONE: "Cone",
    Action.DRY: "Dried",
    Action.FILL: "Filled",
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
_NO_IMAGE = {"no_sensor": "no sensor", "film": "on film", "image_elsewhere": "kept elsewhere"}
_SHOWS = {"length": "the length", "final_size": "the final size", "cone": "the cone", "final": "the finished tooth"}


def sentence_of(fact: RecordedEvent, story: CaseHistory) -> str:
    """One event as a person would tell it."""
    return SAID[fact.kind](fact, story)


def irrigant(name: str) -> str:
    return name.upper() if name == "edta" else plain(name)


def plain(name: str) -> str:
    """A name of the program as words."""
    return str(name).replace("_", " ").replace("-", " ")


def millimetres(length_um: int | None) -> str:
    """A length as a sentence has it; empty for none."""
    return "" if length_um is None else f"{in_mm(length_um)} mm"


def cause(name: str) -> str:
    return _CAUSE.get(name, name)


def emergency(name: str) -> str:
    return _EMERGENCY.get(name, plain(name))


def _with(start: str, *more: str) -> str:
    """The start, and after a colon what there is of the rest."""
    there = ", ".join(each for each in more if each)
    return f"{start}: {there}" if there else start


def _volume(body: Mapping[str, Any]) -> list[str]:
    """What was irrigated with, how much, how long."""
    name, volume_ml, contact_s = body.get("irrigant"), body.get("volume_ml"), body.get("contact_s")
    return [
        irrigant(name) if name else "",
        "" if volume_ml is None else f"{volume_ml:g} ml",
        "" if contact_s is None else f"{contact_s} s in contact",
    ]


def _of_step(fact: RecordedEvent, story: CaseHistory) -> str:
    body, step = fact.event.body, story.step(fact)
    depth_um, stop_um = body.get("depth_um"), body.get("stop_um")
    left = _LEFT.get(str(body.get("exit")), str(body.get("exit")))
    if step is not None and step.action is Action.IRRIGATE:
        return _with("Irrigated", *_volume(body))
    past = depth_um is not None and stop_um is not None and depth_um > stop_um
    where = millimetres(depth_um)
    between = " at " if left == _LEFT["short"] and not past else ", "
    how = between.join(each for each in ("past its stop" if past else left, where) if each)
    if step is not None and step.action is Action.IMAGE and body.get("no_image"):
        how = f"none here, {_NO_IMAGE[body['no_image']]}"
    shown = f" (stop {millimetres(stop_um)})" if stop_um is not None and where and depth_um != stop_um else ""
    return f"{_named(step, fact, story)}: {how}{shown}"


def _named(step: Do | None, fact: RecordedEvent, story: CaseHistory) -> str:
    if step is None:
        return f"Step {fact.event.node}"
    return _STEP[step.action].format(instrument=story.version(fact).instrument(step.instrument))


def _of_sign_off(fact: RecordedEvent, story: CaseHistory) -> str:
    body, step = fact.event.body, story.step(fact)
    point = (step.hold_point or "") if step else of_visits.POINTS.get(fact.event.node, "")
    verb = "Approved" if body.get("exit") == "approved" else "Returned"
    spite = "in spite of what is missing" if body.get("despite_missing") else ""
    bench = "at the bench" if fact.at_bench else ""
    start = " ".join(each for each in (verb, bench, spite) if each)
    return _with(f"{start}, {plain(point)}" if point else start, str(body.get("reason", "")))


def _of_reading(fact: RecordedEvent, story: CaseHistory) -> str:
    return _with("Length taken", *read(fact.event.body.get("taken", {})))


def read(taken: Mapping[str, Any]) -> tuple[str, str]:
    """How something was measured, and what was read."""
    named = ("tooth_mm", "set_mm", "tip_short_mm", "read_mm", "repeat_mm", "seen_mm", "from_terminus_mm")
    numbers = ", ".join(f"{plain(key.removesuffix('_mm'))} {taken[key]:g} mm" for key in named if taken.get(key))
    return plain(taken.get("method", "")), numbers


def _of_inspected(fact: RecordedEvent, story: CaseHistory) -> str:
    body = fact.event.body
    version = story.version(fact)
    name = version.instrument(version.key(str(body.get("instrument", ""))))
    verb = "discarded" if body.get("found") == "discarded" else "looked at, whole"
    return _with(f"{name} {verb}", str(body.get("why", "")))


def _of_on_site(fact: RecordedEvent, story: CaseHistory) -> str:
    who = story.people.get(str(fact.event.body.get("supervisor_id", "")))
    return f"In the room: {who.name if who else 'somebody who is not known here'}"


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


def _of_struck(fact: RecordedEvent, _: CaseHistory) -> str:
    body = fact.event.body
    if body.get("what") == "image":
        return f"Image {put_right(str(body.get('why')), body.get('moved_to'))}"
    return f"Struck, a {body.get('what')}: {STRUCK_WHY.get(str(body.get('why')), '')}"


def _of_close(fact: RecordedEvent, story: CaseHistory) -> str:
    return _with("Closed for today", *of_visits.closed(fact.event.body))


def _of_reopen(fact: RecordedEvent, story: CaseHistory) -> str:
    return f"Opened again; {of_visits.reopened(fact.event.body)}"


def _of_image(fact: RecordedEvent, story: CaseHistory) -> str:
    purpose = _SHOWS.get(str(fact.event.body.get("purpose")))
    return f"Image of {purpose}" if purpose else "Image"


def _of_replan(fact: RecordedEvent, story: CaseHistory) -> str:
    version = story.version(fact)
    first = fact.event.body.get("replaces") == version.hash
    return f"Plan {version.number} is in force" if first else f"Plan {version.number} takes over"


def _of_release(fact: RecordedEvent, story: CaseHistory) -> str:
    left_out = [
        f"{one['canal']} ({one['remark'] or 'with ' + one['joins']})" for one in fact.event.body.get("not_released", ())
    ]
    start = "Plan decided on, not to be worked yet" if left_out else "Plan decided on, every canal may be worked"
    return _with(start, ", ".join(left_out))


_PAUSE = {
    "sensitivity": "it hurts",
    "normal_bleeding": "it bleeds a little",
    "ledge_suspected": "a ledge is suspected",
    "not_sure": "not sure",
    "other": "",
}


def _of_pause(fact: RecordedEvent, _: CaseHistory) -> str:
    body = fact.event.body
    what = _PAUSE.get(str(body.get("what") or "other"), "")
    return _with(f"Paused, {what}" if what else "Paused", str(body.get("reason") or ""))


def _of_corrected(fact: RecordedEvent, story: CaseHistory) -> str:
    body = fact.event.body
    position = next((each.position for each in story.facts if each.event.id == body.get("corrects")), None)
    which = "the emergency" if position is None else f"the emergency of entry {position}"
    what = body.get("what")
    said = f"CORRECTED, {which} was: {emergency(str(what))}" if what else f"IT WAS NOT SO, {which}"
    return _with(said, str(body.get("note") or ""))


def _of_undo(fact: RecordedEvent, story: CaseHistory) -> str:
    undoes = fact.event.body.get("undoes")
    position = next((each.position for each in story.facts if each.event.id == undoes), None)
    return "Taken back" if position is None else f"Taken back: entry {position}"


def _text(start: str, key: str) -> Callable[[RecordedEvent, CaseHistory], str]:
    """Says the start and the text that the event brought."""
    return lambda fact, story: _with(start, str(fact.event.body.get(key) or ""))


SAID: dict[EventKind, Callable[[RecordedEvent, CaseHistory], str]] = {
    EventKind.STEP: _of_step,
    EventKind.ANSWER: lambda fact, _: f"Why past the stop: {cause(str(fact.event.body.get('cause')))}",
    EventKind.READING: _of_reading,
    EventKind.SIGN_OFF: _of_sign_off,
    EventKind.INSPECTED: _of_inspected,
    EventKind.TURN: lambda fact, _: "Turned to this canal",
    EventKind.PAUSE: _of_pause,
    EventKind.EMERGENCY: lambda fact, _: _with(
        f"EMERGENCY, {emergency(str(fact.event.body.get('what')))}", str(fact.event.body.get("note") or "")
    ),
    EventKind.CORRECTED: _of_corrected,
    EventKind.RESUME: _text("Goes on", "reason"),
    EventKind.CLOSE: _of_close,
    EventKind.REOPEN: _of_reopen,
    EventKind.REPLAN: _of_replan,
    EventKind.REVOKED: _text("Approval of the plan withdrawn", "reason"),
    EventKind.RELEASE: _of_release,
    EventKind.ASK: _text("Asked for a supervisor's word", "note"),
    EventKind.COME: _text("Comes to the chair", "note"),
    EventKind.STRUCK: _of_struck,
    EventKind.WANTED: _text("Asks for an image", "note"),
    EventKind.TAKE_OVER: lambda fact, _: "Takes over: works the case from here on",
    EventKind.GIVE_BACK: lambda fact, _: "Gives back: works the case no more",
    EventKind.ON_SITE: _of_on_site,
    EventKind.DAM: lambda fact, _: of_visits.dam(fact.event.body),
    EventKind.IMAGE: _of_image,
    EventKind.IRRIGATED: lambda fact, _: _with("Irrigated once more", *_volume(fact.event.body)),
    EventKind.NOTE: _text("Note", "text"),
    EventKind.UNDO: _of_undo,
}
