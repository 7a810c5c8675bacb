"""The levels of practice, from a straight block to joining canals, and the case as its student knows it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache, lru_cache

from planning.contract.plan_input import CanalInput, Choices, Junction, Kit, Needle, Pattern, PlanInput, RootInput
from planning.contract.plan_value import Plan
from planning.foundation.errors import PlanningError
from planning.foundation.tables import Figures, rows
from planning.instruments.iso_3630 import Instrument, Motion, Use
from planning.lengths.readings import DirectSight
from planning.techniques.files import provided_techniques
from planning.techniques.technique import Setting
from planning.whole_tooth.plan import plan

MOST_KEPT = 32  # plans of a process: what all levels are drawn as most often
TECHNIQUE = "crown-down"


class UnknownLevel(PlanningError):
    """There is no such level of practice.

    Choose one of the levels that are listed.
    """

    code = "unknown-level"
    sentence = "There is no level '{level}'."


@dataclass(frozen=True, slots=True, kw_only=True)
class PracticeLevel:
    """One level of practice."""

    key: str
    name: str
    """In words."""
    canals: tuple[str, ...]
    """In the order in which they are worked."""


def levels() -> tuple[PracticeLevel, ...]:
    """All levels, the easiest first."""
    names = {row["level"]: row["name"] for row in rows("practice_levels")}
    return tuple(
        PracticeLevel(key=key, name=name, canals=tuple(row["canal"] for row in canals_of(key)))
        for key, name in names.items()
    )


def proposed(scored: Iterable[tuple[str, int]]) -> str:
    """The level to go on with, from levels and points so far: the first that was not mastered, else the last."""
    mastered = {level for level, points in scored if points >= Figures()["practice.mastered_from"]}
    return next((level.key for level in levels() if level.key not in mastered), levels()[-1].key)


def canals_of(level: str) -> tuple[Mapping[str, str], ...]:
    """The rows of a level's canals. Raises UnknownLevel."""
    canals = tuple(row for row in rows("practice_levels") if row["level"] == level)
    if not canals:
        raise UnknownLevel(level=level)
    return canals


@lru_cache(maxsize=MOST_KEPT)
def planned(level: str, lengths_mm: tuple[float, ...]) -> Plan:
    """The plan of a level's canals at these working lengths, in bands. Raises UnknownLevel."""
    return plan(case(level, lengths_mm))


def case(level: str, lengths_mm: tuple[float, ...]) -> PlanInput:
    """The case as the student knows it. Raises UnknownLevel."""
    canals = canals_of(level)
    return PlanInput(
        tooth=canals[0]["tooth"],
        setting=Setting(canals[0]["setting"]),
        canals=tuple(_canal(row, length_mm) for row, length_mm in zip(canals, lengths_mm, strict=True)),
        roots=_roots(canals),
        kit=kit(),
        technique=provided_techniques()[TECHNIQUE],
        choices=Choices(needle=kit().needles[0]),
        samples=Figures().count("practice.samples"),
    )


def _canal(row: Mapping[str, str], length_mm: float) -> CanalInput:
    setting = Setting(row["setting"])
    # Sight of the instrument's tip at the foramen is set back from; that of a block's end is not.
    beyond_mm = 0.0 if setting is Setting.BLOCK else Figures()["set_back.seen_at_foramen"]
    joins = row["joins_mm"]
    return CanalInput(
        name=row["canal"],
        root=row["root"],
        reference_point=row["point"],
        readings=(DirectSight(seen_mm=length_mm + beyond_mm, reference_point=row["point"]),),
        curvature_deg=float(row["curvature_deg"]) if row["curvature_deg"] else None,
        curve_start_mm=float(row["curve_start_mm"]) if row["curve_start_mm"] else None,
        junction=Junction(from_terminus_mm=float(joins), method="cone_mark") if joins else None,
    )


def _roots(canals: tuple[Mapping[str, str], ...]) -> tuple[RootInput, ...]:
    """One root where canals join: the one that runs alone to the end is the main one."""
    main = next((row["canal"] for row in canals if not row["joins_mm"]), None)
    joining = {row["root"] for row in canals if row["joins_mm"]}
    return tuple(
        RootInput(name=root, pattern=Pattern.JOIN, main_canal=main)
        if root in joining
        else RootInput(name=root, pattern=Pattern.SEPARATE)
        for root in sorted({row["root"] for row in canals})
    )


@cache
def kit() -> Kit:
    """The kit that practice is worked with."""
    needle = Needle(gauge=Figures().count("practice.needle_gauge"), tip="side_vented")
    return Kit(name="practice", instruments=tuple(map(_instrument, rows("practice_kit"))), needles=(needle,))


def _instrument(row: Mapping[str, str]) -> Instrument:
    return Instrument(
        size=int(row["size"]),
        taper=int(row["taper"]),
        motion=Motion(row["motion"]),
        use=Use(row["use"]),
        length_mm=float(row["length_mm"]),
        cutting_part_mm=float(row["cutting_part_mm"]),
        largest_flute_mm=float(row["largest_flute_mm"]) if row["largest_flute_mm"] else None,
        speed_rpm=int(row["speed_rpm"]) if row["speed_rpm"] else None,
        torque_ncm=float(row["torque_ncm"]) if row["torque_ncm"] else None,
    )
