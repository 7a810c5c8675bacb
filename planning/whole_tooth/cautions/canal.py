"""What a plan warns of that concerns one canal, from what was typed in of it."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import dropwhile
from typing import Any

from planning.anatomy import Tooth, like, usual_range
from planning.anatomy.curvature import BendShape
from planning.canal.canal import Canal
from planning.contract.canal_facts import Finding
from planning.contract.cautions import caution
from planning.contract.plan_input import WIDE_CANAL, PlanInput
from planning.contract.plan_value import Caution
from planning.foundation import tables
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import HUNDREDTH_MM, Motion
from planning.lengths.readings import LengthState, PreOperativeImage, tooth_mm
from planning.techniques.technique import PhaseKind, Setting

APART_MM = 1e-9  # rounding error of doubles


def canal_cautions(canal: Canal, tooth: Tooth, figures: Figures) -> list[Caution]:
    """The cautions that concern one canal before it is planned."""
    rules = (
        _finding(canal),
        _length(canal, figures),
        _range(canal, tooth, figures),
        _flaring(canal),
        _narrow(canal),
        _bend(canal),
        _curve(canal, figures),
        _size(canal),
        _kit(canal),
        _apex(canal, figures),
    )
    cautions = [caution for rule in rules for caution in rule]
    if canal.widths is None:
        cautions.append(_about(canal, "widths-unknown"))
    if canal.join is not None and canal.join.caution is not None:
        cautions.append(canal.join.caution)
    return cautions


def _about(canal: Canal, code: str, **more: Any) -> Caution:
    return caution(code, canal=canal.input.name, **more)


def _finding(canal: Canal) -> Iterator[Caution]:
    # An instrument that has been in the canal has found it.
    entered = any(not isinstance(reading, PreOperativeImage) for reading in canal.input.readings)
    if canal.input.finding is Finding.EXPECTED and not entered:
        yield _about(canal, "canal-not-seen")
    if canal.input.finding is Finding.SEARCHED_NOT_FOUND:
        yield _about(canal, "canal-not-found")


def _length(canal: Canal, figures: Figures) -> Iterator[Caution]:
    length = canal.length
    # A canal that was searched for and not found has no length to take.
    if length.stop_mm is None and canal.input.finding is not Finding.SEARCHED_NOT_FOUND:
        yield _about(canal, "length-missing")
    elif length.state is LengthState.ESTIMATED:
        yield _about(canal, "length-estimated", value=length.stop_mm, unit="mm")
    elif length.state is LengthState.TO_SETTLE:
        yield _about(canal, "length-to-settle", value=length.apart_mm, limit=figures.row("lengths.agree_within"))
    apart, limit = length.from_estimate_mm, figures.row("lengths.estimate_within")
    within = limit.value if length.estimate_within_mm is None else length.estimate_within_mm
    # A length that is unsettled says so below, with what to do.
    if apart is not None and apart > within and length.state is not LengthState.UNSETTLED:
        yield _about(canal, "length-off-estimate", value=apart, limit=limit)
    if length.state is LengthState.UNSETTLED:
        yield _about(canal, "length-unsettled", value=length.apart_mm, unit="mm", do=length.what_to_do)


def _range(canal: Canal, tooth: Tooth, figures: Figures) -> Iterator[Caution]:
    """The tooth's length against the least and greatest ever measured; a training block has no such range."""
    length_mm = tooth_mm(canal.input.readings)
    known = usual_range(tooth)
    if canal.plan_input.setting is Setting.BLOCK or known is None or length_mm is None:
        return
    least, most = known.low_mm, known.high_mm
    if least is None or most is None or least <= length_mm <= most:
        return
    limit = least if length_mm < least else most
    # Read through `figures`, so that the plan names these rows among those it rests on.
    for row in tables.rows("tooth_lengths"):
        if (row["tooth"], row["set"]) == (like(tooth.iso), known.reference_set):
            figures.cell("tooth_lengths", row, "low_mm", row["tooth"], row["set"])
            figures.cell("tooth_lengths", row, "high_mm", row["tooth"], row["set"])
    yield _about(
        canal,
        "length-outside-range",
        value=length_mm,
        limit=limit,
        unit="mm",
        tooth=tooth.iso,
        least=least,
        most=most,
    )


def _flaring(canal: Canal) -> Iterator[Caution]:
    """Coronal instruments have been in, and no length was taken since."""
    plan_input = canal.plan_input
    coronal = {phase.key for phase in plan_input.technique.phases if phase.kind is PhaseKind.FLARE}
    opened = any(felt.node.split("/")[0] in coronal for felt in canal.input.felt)
    if opened and plan_input.setting is not Setting.BLOCK and not _taken_after_flaring(canal):
        yield _about(canal, "length-after-flaring-due")


def _taken_after_flaring(canal: Canal) -> bool:
    return any(reading.after_flaring for reading in canal.input.readings)


def _curve(canal: Canal, figures: Figures) -> Iterator[Caution]:
    angle = canal.input.curvature_deg
    if angle is None:
        return
    again, severe, supervisor = (figures.row(f"curvature.{name}_deg") for name in ("again", "severe", "supervisor"))
    # A technique that takes the length again by itself needs no reminder.
    if angle >= again.value and not _taken_after_flaring(canal) and not _asks_length_again(canal.plan_input):
        yield _about(canal, "length-again-due", value=angle, limit=again)
    if angle > severe.value:
        yield _about(canal, "curve-severe", value=angle, limit=severe)
    if angle > supervisor.value:
        yield _about(canal, "curve-supervisor", value=angle, limit=supervisor)


def _narrow(canal: Canal) -> Iterator[Caution]:
    """No hand instrument of the kit enters a canal that is somewhere narrower than the tips of all of them."""
    if canal.widths is None:
        return
    size = min(instrument.size for instrument in canal.plan_input.kit.instruments if instrument.motion is Motion.HAND)
    narrowest_mm = min(level.narrow_mm for level in canal.widths.levels)
    if narrowest_mm < size * HUNDREDTH_MM - APART_MM:
        limit_mm = size * HUNDREDTH_MM
        yield _about(canal, "canal-too-narrow", value=narrowest_mm, limit=limit_mm, unit="mm", size=f"{size:02d}")


def _bend(canal: Canal) -> Iterator[Caution]:
    """Nothing here computes a bend to both sides: where there is one, or may be, the plan says so."""
    if canal.input.bend_shape is BendShape.DOUBLE:
        yield _about(canal, "bend-double")
    elif canal.input.bend_shape is BendShape.UNCLEAR:
        yield _about(canal, "bend-unclear")


def _asks_length_again(plan_input: PlanInput) -> bool:
    """Whether the technique itself has an image and a supervisor's sign-off once something has widened the canal."""
    phases = [phase for phase in plan_input.technique.phases if plan_input.setting in phase.settings]
    widened = dropwhile(lambda phase: phase.kind not in (PhaseKind.FLARE, PhaseKind.STEP_BACK), phases)
    return any(phase.kind is PhaseKind.SIGN_OFF and phase.image for phase in widened)


def _apex(canal: Canal, figures: Figures) -> Iterator[Caution]:
    width_mm, limit = canal.input.apex_mm, figures.row("apex.supervisor")
    if width_mm is not None and width_mm >= limit.value:
        yield _about(canal, "apex-wide", value=width_mm, limit=limit)


def _size(canal: Canal) -> Iterator[Caution]:
    least, most, size = canal.size_range.least, canal.size_range.most, canal.final_size
    if size is None or canal.size_range.proposed is None:
        chosen = "" if size is None else f" Size {size} was chosen."
        yield _about(canal, WIDE_CANAL, value=size, unit="ISO size", least=least, most=most, chosen=chosen)
        return
    if least <= size <= most:
        return
    code, limit = ("final-size-below", least) if size < least else ("final-size-above", most)
    reason = next((c.reason for c in canal.plan_input.choices.canals if c.canal == canal.input.name), "").strip()
    do = f"Reason given: {reason}" if reason else "Write a reason: the supervisor sees it."
    yield _about(canal, code, value=size, limit=limit, unit="ISO size", least=least, most=most, reason=do)
    if not reason:
        yield _about(canal, "size-reason-missing", value=size, limit=limit, unit="ISO size")


def _kit(canal: Canal) -> Iterator[Caution]:
    """What the kit lacks for the final size; what it could make instead."""
    if not canal.lacks:
        return
    least, most = canal.size_range.least, canal.size_range.most
    can = " or ".join(map(str, canal.kit_makes))
    instead = (
        f"choose {can}, which it can make" if can else f"work with another kit: of {least} to {most} it makes none"
    )
    wanted = ", no ".join(canal.lacks)
    yield _about(canal, "kit-lacks-size", value=canal.final_size, unit="ISO size", wanted=wanted, instead=instead)


def passed_on(canal: Canal, figures: Figures) -> bool:
    """Whether an instrument of this canal may serve others: not through a severe curve, not before its junction is
    known."""
    angle = canal.input.curvature_deg
    severe = angle is not None and angle > figures["curvature.severe_deg"]
    unjoined = canal.join is not None and canal.join.junction_um is None
    return not severe and not unjoined
