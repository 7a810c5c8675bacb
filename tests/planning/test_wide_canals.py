"""A canal that asks for more than it bears: no size is proposed, a supervisor chooses. And a size that does nothing.

Sizes by ISO 3630-1; MB1 of an upper first molar is made 40 at most (Glickman & Dumsha, from memory).
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from planning.contract.canal_facts import WidthInput
from planning.contract.plan_input import CanalChoice, Choices, Kit, Override, PlanInput
from planning.contract.plan_value import CanalPlan, Plan, Severity
from planning.foundation.encoding import decode, encode
from planning.foundation.errors import ChoiceNotPossible, OverrideNotPossible
from planning.lengths.readings import PreOperativeImage
from planning.run_sheet.graph import Step
from planning.run_sheet.walk import Walk
from planning.whole_tooth.plan import plan
from tests.planning.given import CHECK_KIT, OPEN_30, block, four_canals, molar, technique

WIDE: dict[str, Any] = {"first_binder_size": 45}  # the next size is 50


def mb1(
    *overrides: Override, size: int | None = None, kit: Kit = CHECK_KIT, key: str = "crown-down", **more: Any
) -> Plan:
    canals = four_canals()
    choices = Choices(needle=OPEN_30, canals=(CanalChoice(canal="MB1", final_size=size),))
    return plan(
        molar(
            canals=(replace(canals[0], **more), *canals[1:]),
            overrides=overrides,
            choices=choices,
            kit=kit,
            technique=technique(key),
        )
    )


def let(size: int | None = 50, canal: str = "MB1", code: str = "wide-canal") -> Override:
    return Override(code=code, canal=canal, reason="wide, own cone", final_size=size)


def codes(planned: Plan) -> set[str]:
    return {caution.code for caution in planned.cautions if caution.canal == "MB1"}


def phases(canal: CanalPlan) -> set[str]:
    return {node.phase for node in canal.run_sheet.nodes.values() if isinstance(node, Step)}


def test_a_wide_canal_is_explored_and_flared_and_then_waits() -> None:
    planned = mb1(**WIDE)
    canal = planned.canals[0]
    assert (canal.size_range.least, canal.size_range.most, canal.size_range.proposed) == (50, 40, None)
    assert (canal.final_size, canal.final_taper, canal.obturation) == (None, 4, None)
    assert phases(canal) == {"explore", "length", "glide-path", "coronal-flaring", "length-again", "first-binder"}
    assert [reason.code for reason in canal.withheld] == ["wide-canal"]
    assert phases(planned.canals[2]) >= {"ascending", "cone", "fill"}  # DB goes on
    bar = next(caution for caution in planned.cautions if caution.code == "wide-canal")
    assert (bar.severity, bar.value, bar.may_override) == (Severity.STOP, None, True)
    assert codes(planned).isdisjoint({"final-size-below", "final-size-above", "size-reason-missing", "needle-wide"})
    assert {why.of for why in canal.rationales} >= {"size_range.proposed", "final_size"}
    assert decode(Plan, encode(planned)) == planned


def test_by_hand_nothing_larger_than_the_small_file_goes_in_while_no_size_is_chosen() -> None:
    assert phases(mb1(key="step-back", **WIDE).canals[0]) == {"explore", "length"}


def test_an_estimated_wide_canal_shows_what_needs_no_size() -> None:
    canals = four_canals()
    estimated = replace(canals[0], readings=(PreOperativeImage(tooth_mm=20.5, reference_point="MB cusp"),), **WIDE)
    planned = plan(molar(canals=(estimated, *canals[1:])))
    canal = planned.canals[0]
    assert canal.provisional
    tabled = {row.phase for row in planned.stop_table if any(stop.canal == "MB1" for stop in row.stops)}
    assert "Coronal flaring" in tabled
    assert tabled.isdisjoint({"Descending series", "Up to the final size"})


def test_what_a_student_would_like_is_shown_whole_and_waits_for_the_word() -> None:
    canal = mb1(size=50, **WIDE).canals[0]
    assert (canal.final_size, [reason.code for reason in canal.withheld]) == (50, ["wide-canal"])
    assert phases(canal) == {"explore", "length", "glide-path", "coronal-flaring", "length-again", "first-binder"}
    assert canal.obturation is not None
    assert canal.obturation.master_cone == "50/.04"


@pytest.mark.parametrize("wish", [None, 45])
def test_the_size_that_the_supervisor_chose_opens_the_canal(wish: int | None) -> None:
    planned = mb1(let(50), size=wish, **WIDE)
    canal = planned.canals[0]
    assert (canal.final_size, canal.withheld) == (50, ())
    assert "ascending" in phases(canal)
    assert next(caution for caution in planned.cautions if caution.code == "wide-canal").overridden == "wide, own cone"
    walk = Walk(canal.run_sheet)
    assert not walk.ended


def test_a_word_on_a_canal_that_is_wide_no_more_chooses_nothing() -> None:
    planned = mb1(let(50))
    assert planned.canals[0].final_size == 30
    assert "override-unused" in {caution.code for caution in planned.cautions}


@pytest.mark.parametrize(
    ("override", "field"),
    [(let(None), "final_size"), (let(50, code="wall-too-thin"), "final_size")],
)
def test_a_wide_canal_passes_with_a_size_and_nothing_else_takes_one(override: Override, field: str) -> None:
    with pytest.raises(OverrideNotPossible) as refused:
        mb1(override, **WIDE)
    assert refused.value.pointer == ("overrides", 0, field)


def test_a_size_of_no_series_is_refused_where_it_is() -> None:
    with pytest.raises(ChoiceNotPossible) as refused:
        mb1(let(52), **WIDE)
    assert refused.value.pointer == ("overrides", 0, "final_size")


# --- a size that does nothing, and one that nothing closes ---------------------------------------------------------


def wide_block(size: int, narrow_mm: float = 0.36, widening: float = 0.1, **more: Any) -> PlanInput:
    """A block as wide as it was measured; hand arithmetic: 0.36 at its end and 0.1 wider every millimetre."""
    plan_input = block(choices=Choices(needle=OPEN_30, canals=(CanalChoice(canal="single", final_size=size),)), **more)
    widths = (
        WidthInput(from_end_mm=0.0, narrow_mm=narrow_mm),
        WidthInput(from_end_mm=10.0, narrow_mm=narrow_mm + widening * 10),
    )
    return replace(plan_input, canals=(replace(plan_input.canals[0], widths=widths),))


@pytest.mark.parametrize(("size", "cuts"), [(35, False), (40, True)])
def test_a_size_that_is_nowhere_wider_than_the_canal_cuts_nothing(size: int, cuts: bool) -> None:
    """35/.04 is 0.35 at the tip in a canal of 0.36 and widens less than that does; 40/.04 is 0.40."""
    planned = plan(wide_block(size))
    codes_ = {caution.code for caution in planned.cautions}
    assert ("size-cuts-nothing" in codes_) == (not cuts)
    assert ("ascending" in phases(planned.canals[0])) == cuts
    opened = plan(
        wide_block(
            size, overrides=tuple(let(None, "single", code) for code in codes_ & {"size-cuts-nothing", "cone-none"})
        )
    )
    assert "ascending" in phases(opened.canals[0])


def test_a_canal_wider_than_its_final_size_has_no_cone_and_its_gauging_says_why() -> None:
    """By hand: 30/.04 is wider than a tube of 0.60 from 7.5 mm above its end on, and so cuts. But a hand 30, 0.50 mm
    wide 10 mm above its tip, goes to the end before anything shapes: no 30 closes it."""
    planned = plan(wide_block(30, narrow_mm=0.6, widening=0.0, overrides=(let(None, "single", "cone-none"),)))
    canal = planned.canals[0]
    by_code = {caution.code: caution for caution in planned.cautions}
    assert "expected to be wider" in by_code["cone-none"].says
    assert {"final-size-below"} <= set(by_code)
    assert "size-cuts-nothing" not in by_code
    assert canal.expected_path[-2:] == ("first-binder/30-02", "plan-again")
    assert canal.obturation is None


def test_without_a_step_that_gauges_first_the_confirming_one_says_it() -> None:
    """As above; a hand 35 is 0.55 mm wide 10 mm above its tip, and goes there too."""
    whole = technique("crown-down")
    plain = replace(whole, phases=tuple(phase for phase in whole.phases if phase.key != "first-binder"))
    barred = let(None, "single", "cone-none")
    canal = plan(wide_block(30, narrow_mm=0.6, widening=0.0, overrides=(barred,), technique=plain)).canals[0]
    assert "confirm/wider" in canal.expected_path
    assert not any(id_.startswith("fill/") for id_ in canal.expected_path)
    assert canal.obturation is not None
    assert canal.obturation.master_cone is None


def test_what_the_first_binder_showed_counts_as_the_canals_width() -> None:
    """The first to bind is 45: a 40 went to the end, so a hand 35 goes there too, and no 30 closes it."""
    assert "cone-none" in codes(mb1(size=30, **WIDE))
    assert "cone-none" not in codes(mb1(size=30))


def test_a_kit_without_cones_is_not_judged_by_them() -> None:
    assert "cone-none" not in codes(mb1(kit=replace(CHECK_KIT, filling=())))
