"""Which cautions a plan carries: one small rule each, over what was typed in and what came out."""

from __future__ import annotations

import itertools
from collections.abc import Iterator

from planning.canal_plan import Canal
from planning.cautions import caution
from planning.layout import states_motor
from planning.plan_input import Finding, Irrigant, Pattern, PlanInput
from planning.plan_value import Caution, Withheld
from planning.quantities import mm, um
from planning.readings import ConfirmingImage, DirectSight, LengthState, PreOperativeImage, Reading
from planning.tables import Figures
from planning.techniques import Setting
from planning.teeth import LookForKind, Tooth, usual_range

SHUTS = ("isolation-missing", "hypochlorite-in-block", "chlorhexidine-after-hypochlorite")
"""Cautions that leave nothing open on the whole tooth."""


def tooth_cautions(given: PlanInput, tooth: Tooth) -> list[Caution]:
    """What concerns the tooth as a whole."""
    return [*_setting(given), *_irrigants(given), *_motors(given), *_joins(given), *_further_canals(given, tooth)]


def shut_by(found: list[Caution]) -> Withheld | None:
    """Why nothing opens on this tooth, or None."""
    for one in found:
        if one.code in SHUTS:
            return Withheld(from_phase="", code=one.code, says=f"{one.says} {one.do}")
    return None


def canal_cautions(canal: Canal, tooth: Tooth, figures: Figures) -> list[Caution]:
    """What concerns one canal."""
    rules = (_finding(canal), _length(canal), _range(canal, tooth), _curve(canal, figures), _size(canal))
    found = [one for rule in rules for one in rule]
    apex = canal.input.apex_mm
    if apex is not None and apex >= figures["apex.supervisor"]:
        found.append(_about(canal, "apex-wide", value=apex, limit=figures["apex.supervisor"], unit="mm"))
    if canal.join is not None and canal.join.caution is not None:
        found.append(canal.join.caution)
    return found


def _about(
    canal: Canal,
    code: str,
    *,
    value: float | None = None,
    limit: float | None = None,
    unit: str | None = None,
    **fields: object,
) -> Caution:
    return caution(code, canal=canal.input.name, value=value, limit=limit, unit=unit, **fields)


# --- the tooth -------------------------------------------------------------------------------------------------


def _setting(given: PlanInput) -> Iterator[Caution]:
    if given.setting is Setting.CLINIC and not given.isolated:
        yield caution("isolation-missing")
    if given.setting is Setting.EXTRACTED:
        yield caution("bench-protection")


def _irrigants(given: PlanInput) -> Iterator[Caution]:
    choices = given.choices
    used = (choices.irrigant, *choices.final_rinse)
    if given.setting is Setting.BLOCK and Irrigant.SODIUM_HYPOCHLORITE in used:
        yield caution("hypochlorite-in-block")
    pairs = itertools.pairwise(used)
    if (Irrigant.SODIUM_HYPOCHLORITE, Irrigant.CHLORHEXIDINE) in pairs:
        yield caution("chlorhexidine-after-hypochlorite")
    if given.setting is Setting.CLINIC and choices.needle.tip == "open":
        yield caution("needle-open-in-clinic")


def _motors(given: PlanInput) -> Iterator[Caution]:
    silent = [
        i.name
        for i in given.kit.instruments
        if i.motion != "hand" and i.motion in given.technique.motions and not states_motor(i)
    ]
    if silent:
        yield caution("motor-not-stated", value_text=", ".join(silent))


def _joins(given: PlanInput) -> Iterator[Caution]:
    patterns = {root.name: root.pattern for root in given.roots}
    for name in dict.fromkeys(canal.root for canal in given.canals):
        here = [canal.name for canal in given.canals if canal.root == name]
        if len(here) > 1 and patterns.get(name, Pattern.UNKNOWN) is Pattern.UNKNOWN:
            yield caution("join-not-tested", root=name, canals=" and ".join(here))


def _further_canals(given: PlanInput, tooth: Tooth) -> Iterator[Caution]:
    """The canal that gets missed: usual ones that are not in the plan, and what else the tooth may have."""
    if given.setting is Setting.BLOCK:
        return
    charted = {canal.name for canal in given.canals}
    missing = [usual.name for usual in tooth.canals if usual.name not in charted]
    if missing:
        yield caution("usual-canal-missing", tooth=tooth.iso, missing=", ".join(missing))
    further = [other.name for other in tooth.look_for if other.name not in charted and other.kind != LookForKind.FORM]
    if further:
        yield caution("further-canal", tooth=tooth.iso, further=", ".join(further))


# --- one canal -------------------------------------------------------------------------------------------------


def _finding(canal: Canal) -> Iterator[Caution]:
    if canal.input.finding is Finding.EXPECTED:
        yield _about(canal, "canal-not-seen")
    if canal.input.finding is Finding.SEARCHED_NOT_FOUND:
        yield _about(canal, "canal-not-found")


def _length(canal: Canal) -> Iterator[Caution]:
    length = canal.length
    if length.stop_mm is None:
        yield _about(canal, "length-missing")
    elif length.state is LengthState.ESTIMATED:
        yield _about(canal, "length-estimated", value=length.stop_mm, unit="mm")
    elif length.state is LengthState.TO_SETTLE:
        yield _about(canal, "length-to-settle", value=length.apart_mm, unit="mm")
    if length.state is LengthState.UNSETTLED:
        yield _about(canal, "length-unsettled", value=length.apart_mm, unit="mm", do=length.what_to_do)


def _range(canal: Canal, tooth: Tooth) -> Iterator[Caution]:
    """The tooth's length against the least and greatest ever measured; a training block has no such range."""
    measured = [t for t in map(_tooth_mm, canal.input.readings) if t is not None]
    known = usual_range(tooth)
    if canal.given.setting is Setting.BLOCK or known is None or not measured:
        return
    least, most = known.low_mm, known.high_mm
    if least is None or most is None or least <= measured[-1] <= most:
        return
    limit = least if measured[-1] < least else most
    yield _about(
        canal,
        "length-outside-range",
        value=measured[-1],
        limit=limit,
        unit="mm",
        tooth=tooth.iso,
        least=least,
        most=most,
    )


def _tooth_mm(reading: Reading) -> float | None:
    match reading:
        case PreOperativeImage(tooth_mm=tooth_mm):
            return tooth_mm
        case ConfirmingImage(set_mm=set_mm, tip_short_mm=tip_short_mm):
            return mm(um(set_mm) + um(tip_short_mm))
        case DirectSight(seen_mm=seen_mm):
            return seen_mm
        case _:
            return None


def _curve(canal: Canal, figures: Figures) -> Iterator[Caution]:
    angle = canal.input.curvature_deg
    if angle is None:
        return
    again, severe, supervisor = (figures[f"curvature.{name}"] for name in ("again_deg", "severe_deg", "supervisor_deg"))
    if angle >= again and not any(reading.after_flaring for reading in canal.input.readings):
        yield _about(canal, "length-again-due", value=angle, limit=again, unit="deg")
    if angle > severe:
        yield _about(canal, "curve-severe", value=angle, limit=severe, unit="deg")
    if angle > supervisor:
        yield _about(canal, "curve-supervisor", value=angle, limit=supervisor, unit="deg")


def _size(canal: Canal) -> Iterator[Caution]:
    least, most, size = canal.size_range.least, canal.size_range.most, canal.final_size
    if least <= size <= most:
        return
    code, limit = ("final-size-below", least) if size < least else ("final-size-above", most)
    reason = next((c.reason for c in canal.given.choices.canals if c.canal == canal.input.name), "").strip()
    do = f"Reason given: {reason}" if reason else "Write a reason: the supervisor sees it."
    yield _about(canal, code, value=size, limit=limit, unit="ISO size", least=least, most=most, reason=do)


def passed_on(canal: Canal, figures: Figures) -> bool:
    """Whether an instrument of this canal may serve others: not through a severe curve, not before its junction is
    known."""
    angle = canal.input.curvature_deg
    severe = angle is not None and angle > figures["curvature.severe_deg"]
    unjoined = canal.join is not None and canal.join.junction_um is None
    return not severe and not unjoined
