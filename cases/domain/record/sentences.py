"""What happened, in plain words: one sentence for each kind of event."""

from __future__ import annotations

from functools import singledispatch

from cases.domain.events import payloads as p
from cases.domain.events.visit_payloads import ClosePayload, DamPayload, Found, OnSitePayload, ReopenPayload
from cases.domain.progress.visit import CHECK, RENEW
from cases.domain.record.case_history import CaseHistory, RecordedEvent
from cases.domain.record.words import STRUCK_WHY, cause, emergency, irrigant, millimetres, plain, put_right, read
from planning.foundation.encoding import encode
from planning.run_sheet.graph import Action, Step


def sentence_of(fact: RecordedEvent, history: CaseHistory) -> str:
    """One event as a person would tell it."""
    return sentence(fact.payload, fact, history)


@singledispatch
def sentence(payload: object, fact: RecordedEvent, history: CaseHistory) -> str:
    """The sentence of an event; its payload's class chooses the function."""
    raise LookupError(f"{type(payload).__name__} has no sentence.")


def _with(start: str, *more: str) -> str:
    """The start, and after a colon what there is of the rest."""
    there = ", ".join(each for each in more if each)
    return f"{start}: {there}" if there else start


# --- the work on a canal -----------------------------------------------------------------------------------------

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
_NO_IMAGE = {"no_sensor": "no sensor", "film": "on film", "image_elsewhere": "kept elsewhere"}
_SHOWS = {"length": "the length", "final_size": "the final size", "cone": "the cone", "final": "the finished tooth"}


@sentence.register
def _step(step: p.StepPayload, fact: RecordedEvent, history: CaseHistory) -> str:
    planned = history.step(fact)
    if planned is not None and planned.action is Action.IRRIGATE:
        return _with("Irrigated", *_volume(step))
    left, where = _LEFT.get(step.exit, step.exit), millimetres(step.depth_um)
    past = step.depth_um is not None and step.stop_um is not None and step.depth_um > step.stop_um
    # "Stopped short at 18.5 mm", but "at its stop, 19.0 mm".
    between = " at " if left == _LEFT["short"] and not past else ", "
    how = between.join(each for each in ("past its stop" if past else left, where) if each)
    if planned is not None and planned.action is Action.IMAGE and step.no_image:
        how = f"none here, {_NO_IMAGE[step.no_image]}"
    differs = step.stop_um is not None and where and step.depth_um != step.stop_um
    shown = f" (stop {millimetres(step.stop_um)})" if differs else ""
    return f"{_named(planned, fact, history)}: {how}{shown}"


def _named(step: Step | None, fact: RecordedEvent, history: CaseHistory) -> str:
    if step is None:
        return f"Step {fact.event.node}"
    return _STEP[step.action].format(instrument=history.version(fact).instrument(step.instrument))


def _volume(payload: p.StepPayload | p.IrrigatedPayload) -> list[str]:
    """What was irrigated with, how much, how long."""
    return [
        irrigant(payload.irrigant) if payload.irrigant else "",
        "" if payload.volume_ml is None else f"{payload.volume_ml:g} ml",
        "" if payload.contact_s is None else f"{payload.contact_s} s in contact",
    ]


@sentence.register
def _answer(answer: p.AnswerPayload, fact: RecordedEvent, history: CaseHistory) -> str:
    return f"Why past the stop: {cause(answer.cause)}"


@sentence.register
def _reading(reading: p.ReadingPayload, fact: RecordedEvent, history: CaseHistory) -> str:
    return _with("Length taken", *read(encode(reading.taken)))


@sentence.register
def _inspected(inspected: p.InspectedPayload, fact: RecordedEvent, history: CaseHistory) -> str:
    version = history.version(fact)
    name = version.instrument(version.key(inspected.instrument))
    verb = "discarded" if inspected.found == "discarded" else "looked at, whole"
    return _with(f"{name} {verb}", inspected.why)


@sentence.register
def _turn(turn: p.TurnPayload, fact: RecordedEvent, history: CaseHistory) -> str:
    return "Turned to this canal"


@sentence.register
def _image(image: p.ImagePayload, fact: RecordedEvent, history: CaseHistory) -> str:
    purpose = _SHOWS.get(image.purpose)
    return f"Image of {purpose}" if purpose else "Image"


@sentence.register
def _irrigated(irrigated: p.IrrigatedPayload, fact: RecordedEvent, history: CaseHistory) -> str:
    return _with("Irrigated once more", *_volume(irrigated))


@sentence.register
def _note(note: p.NotePayload, fact: RecordedEvent, history: CaseHistory) -> str:
    return _with("Note", note.text)


@sentence.register
def _undo(undo: p.UndoPayload, fact: RecordedEvent, history: CaseHistory) -> str:
    position = _position(history, undo.undoes)
    return "Taken back" if position is None else f"Taken back: entry {position}"


def _position(history: CaseHistory, event: str) -> int | None:
    return next((each.position for each in history.facts if each.event.id == event), None)


# --- halts, and what a supervisor says ---------------------------------------------------------------------------

_PAUSE = {
    "sensitivity": "it hurts",
    "normal_bleeding": "it bleeds a little",
    "ledge_suspected": "a ledge is suspected",
    "not_sure": "not sure",
    "other": "",
}


@sentence.register
def _pause(pause: p.PausePayload, fact: RecordedEvent, history: CaseHistory) -> str:
    what = _PAUSE[pause.what]
    return _with(f"Paused, {what}" if what else "Paused", pause.reason)


@sentence.register
def _emergency(emergency_payload: p.EmergencyPayload, fact: RecordedEvent, history: CaseHistory) -> str:
    return _with(f"EMERGENCY, {emergency(emergency_payload.what)}", emergency_payload.note)


@sentence.register
def _corrected(corrected: p.CorrectedPayload, fact: RecordedEvent, history: CaseHistory) -> str:
    position = _position(history, corrected.corrects)
    which = "the emergency" if position is None else f"the emergency of entry {position}"
    was = f"CORRECTED, {which} was: {emergency(corrected.what)}" if corrected.what else f"IT WAS NOT SO, {which}"
    return _with(was, corrected.note)


@sentence.register
def _sign_off(sign_off: p.SignOffPayload, fact: RecordedEvent, history: CaseHistory) -> str:
    step = history.step(fact)
    point = (step.hold_point or "") if step else _VISIT_POINTS.get(fact.event.node, "")
    verb = "Approved" if sign_off.exit == "approved" else "Returned"
    spite = "in spite of what is missing" if sign_off.despite_missing else ""
    place = "on site" if sign_off.on_site else ""
    start = " ".join(each for each in (verb, place, spite) if each)
    return _with(f"{start}, {plain(point)}" if point else start, sign_off.reason)


@sentence.register
def _resume(resume: p.ResumePayload, fact: RecordedEvent, history: CaseHistory) -> str:
    return _with("Goes on", resume.reason)


@sentence.register
def _ask(ask: p.AskPayload, fact: RecordedEvent, history: CaseHistory) -> str:
    return _with("Asked for a supervisor's sign-off", ask.note)


@sentence.register
def _come(come: p.ComePayload, fact: RecordedEvent, history: CaseHistory) -> str:
    return _with("Comes to the chair", come.note)


@sentence.register
def _wanted(wanted: p.WantedPayload, fact: RecordedEvent, history: CaseHistory) -> str:
    return _with("Asks for an image", wanted.note)


@sentence.register
def _take_over(_: p.TakeOverPayload, fact: RecordedEvent, history: CaseHistory) -> str:
    return "Takes over: works the case from here on"


@sentence.register
def _give_back(_: p.GiveBackPayload, fact: RecordedEvent, history: CaseHistory) -> str:
    return "Gives back: works the case no more"


# --- what the program records itself -----------------------------------------------------------------------------


@sentence.register
def _replan(replan: p.ReplanPayload, fact: RecordedEvent, history: CaseHistory) -> str:
    version = history.version(fact)
    first = replan.replaces == version.hash
    return f"Plan {version.number} is in force" if first else f"Plan {version.number} takes over"


@sentence.register
def _revoked(revoked: p.RevokedPayload, fact: RecordedEvent, history: CaseHistory) -> str:
    return _with("Approval of the plan withdrawn", revoked.reason)


@sentence.register
def _release(release: p.ReleasePayload, fact: RecordedEvent, history: CaseHistory) -> str:
    left_out = [f"{left.canal} ({left.remark or 'with ' + left.joins})" for left in release.not_released]
    start = "Plan decided on, not to be worked yet" if left_out else "Plan decided on, every canal may be worked"
    return _with(start, ", ".join(left_out))


@sentence.register
def _struck(struck: p.StruckPayload, fact: RecordedEvent, history: CaseHistory) -> str:
    if struck.what == "image":
        return f"Image {put_right(struck.why, struck.moved_to)}"
    return f"Struck, a {struck.what}: {STRUCK_WHY[struck.why]}"


# --- the visit ---------------------------------------------------------------------------------------------------

_SEALED = {True: "access sealed", False: "access open"}
_LEFT_IN = {
    "calcium_hydroxide": "calcium hydroxide",
    "zinc_oxide": "zinc oxide based",
    "glass_ionomer": "glass ionomer",
    "none": "none",
    "other": "other",
}
_DAM = {"on": "Dam on", "off": "Dam off", "leaking": "Dam leaking"}
_VISIT_POINTS = {CHECK: "closed visit", RENEW: "approval for this visit"}
"""What a supervisor's sign-off of the visit is about, by its node."""


@sentence.register
def _close(close: ClosePayload, fact: RecordedEvent, history: CaseHistory) -> str:
    """What was left in the tooth, and how."""
    dressing = f"dressing {_LEFT_IN[close.dressing]}" if close.dressing else ""
    temporary = f"temporary filling {_LEFT_IN[close.temporary]}" if close.temporary else ""
    return _with("Closed for today", dressing, temporary, _SEALED[close.access_sealed], close.note)


@sentence.register
def _reopen(reopen: ReopenPayload, fact: RecordedEvent, history: CaseHistory) -> str:
    """Which canals were found as they were left, and what was different in the others."""
    as_left = f"as they were left: {', '.join(reopen.as_left) or 'none'}"
    return "; ".join(["Opened again", as_left, *filter(None, map(_failed, reopen.found))])


def _failed(check: Found) -> str:
    """What was not as before in one canal; empty where all was."""
    if check.reference_point:
        return f"{check.canal}: measured from {check.reference_point} now"
    short = "small instrument stays short" if check.small_as_deep is False else ""
    differs = "length differs" if check.length_agrees is False else ""
    why = ", ".join(filter(None, (short, differs)))
    return f"{check.canal}: {why}" if why else ""


@sentence.register
def _on_site(named: OnSitePayload, fact: RecordedEvent, history: CaseHistory) -> str:
    who = history.people.get(named.supervisor_id)
    return f"In the room: {who.name if who else 'somebody who is not known here'}"


@sentence.register
def _dam(dam: DamPayload, fact: RecordedEvent, history: CaseHistory) -> str:
    return _DAM[dam.state]
