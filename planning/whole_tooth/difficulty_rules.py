"""How difficult a case is: what a person recorded and what the plan's own input shows, counted.

A factor counts once, at its highest level: recording 'low' does not take away what the input shows.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from planning.anatomy import Tooth
from planning.contract.canal_facts import Finding
from planning.contract.cautions import caution
from planning.contract.difficulty import LEVELS, Difficulty, FactorFound, Level, factors
from planning.contract.plan_input import CanalInput, Pattern, PlanInput
from planning.contract.plan_value import Caution
from planning.foundation.errors import FactorNotKnown
from planning.foundation.tables import Figure, Figures
from planning.lengths.readings import tooth_mm
from planning.techniques.technique import Setting

DIVIDES = (Pattern.DIVIDE, Pattern.JOIN_AND_DIVIDE, Pattern.DIVIDE_AND_JOIN)
KINDS: tuple[tuple[str, Level], ...] = (("first molar", "moderate"), ("second molar", "high"), ("third molar", "high"))
"""How the names of teeth end that are no front teeth or premolars."""


def refuse_unknown(recorded: Iterable[str]) -> None:
    """Raises FactorNotKnown, its path the place in the list."""
    seen: set[str] = set()
    for number, code in enumerate(recorded):
        key = code.partition(":")[0]
        factor = factors().get(key)
        codes = [] if factor is None else [level.code for level in factor.levels]
        if not codes:
            reason = f"'{key[:40]}' is no factor of difficulty. There are: {', '.join(factors())}."
            raise FactorNotKnown(reason=reason, at=(number,))
        if code not in codes:
            raise FactorNotKnown(
                reason=f"'{code[:60]}' is no level of '{key}'. There are: {', '.join(codes)}.", at=(number,)
            )
        if key in seen:
            raise FactorNotKnown(reason=f"'{key}' is there twice. Record one level of it.", at=(number,))
        seen.add(key)


def count(plan_input: PlanInput, tooth: Tooth, figures: Figures) -> Difficulty | None:
    """The difficulty of the case; None for a training block. Raises FactorNotKnown, its path below the input."""
    try:
        refuse_unknown(plan_input.factors)
    except FactorNotKnown as refusal:
        raise refusal.below("factors") from None
    if plan_input.setting is Setting.BLOCK:
        return None
    factors_found = _highest([*map(_recorded, plan_input.factors), *_worked_out(plan_input, tooth, figures)])
    high, moderate = (sum(factor.level == level for factor in factors_found) for level in ("high", "moderate"))
    rule = figures.row("difficulty.moderate_high")
    return Difficulty(
        level=_level(high, moderate, figures.count("difficulty.moderate_high")),
        factors=tuple(factors_found),
        rule=(
            f"{high} high and {moderate} moderate. One high factor, or {rule.value:g} moderate ones, make a case high; "
            "fewer moderate ones make it moderate."
        ),
        source=rule.source,
        know=rule.know,
    )


def _level(high: int, moderate: int, moderate_high: int) -> Level:
    if high or moderate >= moderate_high:
        return "high"
    return "moderate" if moderate else "low"


def cautions(plan_input: PlanInput, counted: Difficulty | None) -> Iterator[Caution]:
    """A high case waits for a supervisor where there is a patient."""
    if counted is None or counted.level != "high":
        return
    code = "difficulty-high" if plan_input.setting is Setting.CLINIC else "difficulty-high-bench"
    yield caution(code, factors="; ".join(factor.says for factor in counted.factors))


def _highest(factors_found: Iterable[FactorFound]) -> list[FactorFound]:
    """Each factor once, at its highest level; those above low, the highest first."""
    kept: dict[str, FactorFound] = {}
    for factor in factors_found:
        before = kept.get(factor.code)
        # Of equal levels the first stays: what a person recorded comes before what the input shows.
        if before is None or LEVELS.index(factor.level) > LEVELS.index(before.level):
            kept[factor.code] = factor
    return sorted(
        (factor for factor in kept.values() if factor.level != "low"), key=lambda factor: -LEVELS.index(factor.level)
    )


def _recorded(code: str) -> FactorFound:
    key = code.partition(":")[0]
    factor = factors()[key]
    says = next(each for each in factor.levels if each.code == code)
    return FactorFound(
        code=key,
        level=says.level,
        says=f"{factor.title}: {says.says}",
        from_plan=False,
        source=factor.source,
        know=factor.know,
    )


def _shown(key: str, level: Level, what: str, figure: Figure | None = None) -> FactorFound:
    """A factor that the input shows, with what shows it."""
    factor = _recorded(f"{key}:{level}")
    rests_on = figure or factor
    says = f"{factor.says} ({what})"
    return replace(factor, says=says, from_plan=True, source=rests_on.source, know=rests_on.know)


def _worked_out(plan_input: PlanInput, tooth: Tooth, figures: Figures) -> Iterator[FactorFound]:
    # The tables have no column for the kind of a tooth: its English name ends with it.
    yield from (_shown("kind", level, tooth.name) for end, level in KINDS if tooth.name.endswith(end))
    for root in plan_input.roots:
        if root.pattern in DIVIDES:
            yield _shown("division", "high", f"{root.name}: {root.pattern}")
    for canal in plan_input.canals:
        yield from _of_canal(canal, figures)


def _of_canal(canal: CanalInput, figures: Figures) -> Iterator[FactorFound]:
    curved, much_curved = figures.row("difficulty.curved_deg"), figures.row("difficulty.much_curved_deg")
    wide, open_, long_ = figures.row("apex.supervisor"), figures.row("apex.refused"), figures.row("difficulty.long_mm")
    name, angle, apex = canal.name, canal.curvature_deg or 0.0, canal.apex_mm or 0.0
    if angle > much_curved.value:
        yield _shown("curvature", "high", f"{name}: {angle:g} degrees", much_curved)
    elif angle >= curved.value:
        yield _shown("curvature", "moderate", f"{name}: {angle:g} degrees", curved)
    if apex > open_.value:
        yield _shown("apex", "high", f"{name}: {apex:g} mm", open_)
    elif apex >= wide.value:
        yield _shown("apex", "moderate", f"{name}: {apex:g} mm", wide)
    if canal.finding is Finding.SEARCHED_NOT_FOUND:
        yield _shown("orifices", "moderate", name)
    length_mm = tooth_mm(canal.readings)
    if length_mm is not None and length_mm > long_.value:
        yield _shown("length", "high", f"{name}: {length_mm:g} mm", long_)
