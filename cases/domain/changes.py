"""What changed between two versions of a plan, for the one who has to decide again."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum

from planning.plan_input import CanalInput, Needle, PlanInput
from planning.plan_value import CanalPlan, Caution, Plan


class What(StrEnum):
    SETTING = "setting"
    KIT = "kit"
    TECHNIQUE = "technique"
    NEEDLE = "needle"
    IRRIGANT = "irrigant"
    FINAL_RINSE = "final_rinse"
    SERIES_TAPER = "series_taper"
    ISOLATED = "isolated"
    THRESHOLDS = "thresholds"
    LENGTH = "length"
    """The working length before rounding, mm."""
    LENGTH_STATE = "length_state"
    END = "end"
    """Deepest stop of a shaping instrument, mm."""
    JUNCTION = "junction"
    FINAL_SIZE = "final_size"
    REASON = "reason"
    """Why a size outside the advised range was chosen."""
    STOP = "stop"
    """The stop of one instrument, mm."""
    NEEDLE_CEILING = "needle_ceiling"
    FINDING = "finding"
    REFERENCE_POINT = "reference_point"
    WITHHELD = "withheld"


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    what: What
    before: str | None
    after: str | None
    subject: str = ""
    """The instrument and phase, where it is about one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalChanges:
    canal: str
    came: bool
    """Not in the earlier version."""
    went: bool
    """Not in the later version."""
    changes: tuple[Change, ...]
    cautions_came: tuple[Caution, ...]
    cautions_went: tuple[Caution, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanChanges:
    """From one version to another. `canals` lists only those where something changed."""

    from_number: int
    to_number: int
    tooth: tuple[Change, ...]
    canals: tuple[CanalChanges, ...]
    cautions_came: tuple[Caution, ...]
    """Of the tooth as a whole."""
    cautions_went: tuple[Caution, ...]
    nothing: bool
    """Nothing changed that a plan shows."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Planned:
    """A version as it is compared."""

    number: int
    given: PlanInput
    plan: Plan


def compare(before: Planned, after: Planned) -> PlanChanges:
    """What changed from one version to the other."""
    tooth = tuple(_differing(_of_tooth(before), _of_tooth(after)))
    names = dict.fromkeys(c.canal for each in (after, before) for c in each.plan.canals)
    canals = tuple(found for name in names if (found := _canal(name, before, after)) is not None)
    came, went = _cautions(None, before, after)
    return PlanChanges(
        from_number=before.number,
        to_number=after.number,
        tooth=tooth,
        canals=canals,
        cautions_came=came,
        cautions_went=went,
        nothing=not (tooth or canals or came or went),
    )


Said = Mapping[tuple[What, str], str | None]
"""What a version says, by what it is about."""


def _differing(before: Said, after: Said) -> Iterator[Change]:
    for key in dict.fromkeys((*after, *before)):
        old, new = before.get(key), after.get(key)
        if old != new:
            yield Change(what=key[0], subject=key[1], before=old, after=new)


def _of_tooth(planned: Planned) -> Said:
    given, plan = planned.given, planned.plan
    choices = given.choices
    return {
        (What.SETTING, ""): given.setting.value,
        (What.KIT, ""): given.kit.name,
        (What.TECHNIQUE, ""): plan.technique,
        (What.NEEDLE, ""): _needle(choices.needle),
        (What.IRRIGANT, ""): choices.irrigant.value,
        (What.FINAL_RINSE, ""): ", ".join(choices.final_rinse) or None,
        (What.SERIES_TAPER, ""): None if choices.series_taper is None else f".{choices.series_taper:02d}",
        (What.ISOLATED, ""): "yes" if given.isolated else "no",
        **{(What.THRESHOLDS, key): f"{value:g}" for key, value in sorted(given.thresholds.items())},
    }


def _needle(needle: Needle) -> str:
    return f"{needle.gauge} G, {needle.tip.replace('_', '-')}"


def _canal(name: str, before: Planned, after: Planned) -> CanalChanges | None:
    old, new = _of_canal(name, before), _of_canal(name, after)
    changes = tuple(_differing(old, new)) if old and new else ()
    came, went = _cautions(name, before, after)
    if old and new and not (changes or came or went):
        return None
    return CanalChanges(canal=name, came=not old, went=not new, changes=changes, cautions_came=came, cautions_went=went)


def _of_canal(name: str, planned: Planned) -> Said:
    """Empty where the version has no such canal."""
    canal = next((each for each in planned.plan.canals if each.canal == name), None)
    given = next((each for each in planned.given.canals if each.name == name), None)
    if canal is None or given is None:
        return {}
    reason = next((c.reason for c in planned.given.choices.canals if c.canal == name), "")
    return {
        **_lengths(canal, given),
        (What.FINAL_SIZE, ""): f"{canal.final_size:02d}/.{canal.final_taper:02d}",
        (What.REASON, ""): reason or None,
        **{
            (What.STOP, f"{row.instrument.key}, {row.phase}"): _mm(stop.stop_mm)
            for row in planned.plan.stop_table
            for stop in row.stops
            if stop.canal == name
        },
        (What.NEEDLE_CEILING, ""): None if canal.needle is None else _mm(canal.needle.ceiling_mm),
        **{(What.WITHHELD, one.from_phase): one.says for one in canal.withheld},
    }


def _lengths(canal: CanalPlan, given: CanalInput) -> Said:
    return {
        (What.FINDING, ""): given.finding.value,
        (What.REFERENCE_POINT, ""): canal.reference_point,
        (What.LENGTH, ""): _mm(canal.length.working_length_mm),
        (What.LENGTH_STATE, ""): canal.length.state.value,
        (What.END, ""): _mm(canal.end_mm),
        (What.JUNCTION, ""): _mm(canal.junction_mm),
    }


def _mm(value: float | None) -> str | None:
    return None if value is None else f"{value:g}"


def _cautions(canal: str | None, before: Planned, after: Planned) -> tuple[tuple[Caution, ...], tuple[Caution, ...]]:
    """Those that came and those that went, of one canal or (None) of the tooth."""
    old = {(c.code, c.says, c.overridden): c for c in before.plan.cautions if c.canal == canal}
    new = {(c.code, c.says, c.overridden): c for c in after.plan.cautions if c.canal == canal}
    came = tuple(c for key, c in new.items() if key not in old)
    went = tuple(c for key, c in old.items() if key not in new)
    return came, went
