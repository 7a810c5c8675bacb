"""What changed between two versions of a plan, for the one who has to decide again."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from cases.domain.plans.differences import differences
from cases.domain.plans.telling import Change, ChangeKind, told
from planning.contract.plan_input import PlanInput
from planning.contract.plan_value import CanalPlan, Caution, Plan, Severity
from planning.foundation.facts import Bears


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
    """From one version to another. `canals` lists only those where something changed, the most dangerous first."""

    from_number: int
    to_number: int
    tooth: tuple[Change, ...]
    canals: tuple[CanalChanges, ...]
    cautions_came: tuple[Caution, ...]
    """Of the tooth as a whole."""
    cautions_went: tuple[Caution, ...]
    nothing: bool
    """Nothing changed that a plan shows or rests on."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalGiven:
    canal: str
    changes: tuple[Change, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class GivenChanges:
    """How a plan's input differs from a version's before the plan is made; the most dangerous difference first."""

    from_number: int
    tooth: tuple[Change, ...]
    canals: tuple[CanalGiven, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Planned:
    """A version as it is compared."""

    number: int
    plan_input: PlanInput
    plan: Plan


def compare(before: Planned, after: Planned) -> PlanChanges:
    """What changed from one version to the other: everything that went in, and what came out of it."""
    by_canal = told_of_given(before.plan_input, after.plan_input)
    planned = (c.canal for each in (after, before) for c in each.plan.canals)
    names = dict.fromkeys((*planned, *(name for name in by_canal if name is not None)))
    canals = tuple(
        changes for name in names if (changes := _canal(name, before, after, by_canal.get(name, ()))) is not None
    )
    tooth = tuple(sorted(by_canal.get(None, ()), key=_danger))
    came, went = _cautions(None, before, after)
    return PlanChanges(
        from_number=before.number,
        to_number=after.number,
        tooth=tooth,
        canals=tuple(sorted(canals, key=_worst)),
        cautions_came=came,
        cautions_went=went,
        nothing=not (tooth or canals or came or went),
    )


def told_of_given(before: PlanInput, after: PlanInput) -> dict[str | None, list[Change]]:
    """What changed of all that went in, by the canal it concerns; None for the tooth as a whole."""
    by_canal: dict[str | None, list[Change]] = {}
    for difference in differences(before, after):
        canal, change = told(difference)
        if change is not None:
            by_canal.setdefault(canal, []).append(change)
    return by_canal


def given_changes(from_number: int, before: PlanInput, after: PlanInput) -> GivenChanges:
    """How the input `after`, of which no plan has been made yet, differs from a version's."""
    by_canal = {canal: tuple(sorted(changes, key=_danger)) for canal, changes in told_of_given(before, after).items()}
    canals = (CanalGiven(canal=canal, changes=changes) for canal, changes in by_canal.items() if canal is not None)
    by_danger = sorted(canals, key=lambda each: _danger(each.changes[0]))
    return GivenChanges(from_number=from_number, tooth=by_canal.get(None, ()), canals=tuple(by_danger))


DANGER = tuple(Bears)


def _danger(change: Change) -> int:
    return DANGER.index(change.bears_on)


def _worst(canal: CanalChanges) -> int:
    """Lower is more dangerous: a caution that newly stops the work, then what the changes bear on."""
    if any(caution.severity is Severity.STOP for caution in canal.cautions_came):
        return -1
    return min(map(_danger, canal.changes), default=0)


def _canal(name: str, before: Planned, after: Planned, inputs: Sequence[Change]) -> CanalChanges | None:
    old, new = _of_canal(name, before), _of_canal(name, after)
    outcomes = _outcomes(old, new) if old and new else ()
    changes = tuple(sorted((*outcomes, *inputs), key=_danger))
    came, went = _cautions(name, before, after)
    if old and new and not (changes or came or went):
        return None
    return CanalChanges(canal=name, came=not old, went=not new, changes=changes, cautions_came=came, cautions_went=went)


CanalOutcomes = Mapping[tuple[ChangeKind, str], str | None]
"""The outcomes of one canal's plan, each by its kind and its subject."""

OUTCOMES: dict[ChangeKind, tuple[str, str, Bears]] = {
    ChangeKind.LENGTH: ("working length", "mm", Bears.DEPTH),
    ChangeKind.LENGTH_STATE: ("length", "", Bears.DEPTH),
    ChangeKind.END: ("ends at", "mm", Bears.DEPTH),
    ChangeKind.JUNCTION: ("junction", "mm", Bears.DEPTH),
    ChangeKind.STOP: ("stop", "mm", Bears.DEPTH),
    ChangeKind.NEEDLE_CEILING: ("needle never past", "mm", Bears.DEPTH),
    ChangeKind.WITHHELD: ("withheld", "", Bears.SAFETY),
    ChangeKind.FINAL_SIZE: ("final size", "", Bears.SHAPE),
}
"""What each is called, its unit and what it bears on."""


def _outcomes(before: CanalOutcomes, after: CanalOutcomes) -> Iterator[Change]:
    for what, subject in dict.fromkeys((*after, *before)):
        old, new = before.get((what, subject)), after.get((what, subject))
        if old != new:
            label, unit, bears_on = OUTCOMES[what]
            yield Change(
                what=what, subject=subject, before=old, after=new, label=label, unit=unit, bears_on=bears_on, path=""
            )


def _of_canal(name: str, planned: Planned) -> CanalOutcomes:
    """The outcomes of one canal in a version; empty where the version has no such canal."""
    canal = next((each for each in planned.plan.canals if each.canal == name), None)
    if canal is None:
        return {}
    return {
        **_lengths(canal),
        (ChangeKind.FINAL_SIZE, ""): canal.final_name,
        **{
            (ChangeKind.STOP, f"{row.instrument.key}, {row.phase}"): _mm(stop.stop_mm)
            for row in planned.plan.stop_table
            for stop in row.stops
            if stop.canal == name
        },
        (ChangeKind.NEEDLE_CEILING, ""): None if canal.needle is None else _mm(canal.needle.ceiling_mm),
        **{(ChangeKind.WITHHELD, withheld.from_phase): withheld.says for withheld in canal.withheld},
    }


def _lengths(canal: CanalPlan) -> CanalOutcomes:
    return {
        (ChangeKind.LENGTH, ""): _mm(canal.length.working_length_mm),
        (ChangeKind.LENGTH_STATE, ""): canal.length.state.value,
        (ChangeKind.END, ""): _mm(canal.end_mm),
        (ChangeKind.JUNCTION, ""): _mm(canal.junction_mm),
    }


def _mm(value: float | None) -> str | None:
    return None if value is None else f"{value:g}"


def _cautions(canal: str | None, before: Planned, after: Planned) -> tuple[tuple[Caution, ...], tuple[Caution, ...]]:
    """The cautions that came, and those that went: of one canal, or of the tooth where `canal` is None."""
    # By their sentences too, so that a caution whose figures changed is told as gone and come.
    old = {(c.code, c.says, c.overridden): c for c in before.plan.cautions if c.canal == canal}
    new = {(c.code, c.says, c.overridden): c for c in after.plan.cautions if c.canal == canal}
    came = tuple(c for key, c in new.items() if key not in old)
    went = tuple(c for key, c in old.items() if key not in new)
    return came, went
