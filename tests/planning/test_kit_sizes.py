"""Final sizes that the kit cannot make: another of the range is proposed, or what goes by the size waits.

Ranges by the tables: MB1 of an upper first molar 30 to 40, an upper central incisor 35 to 60 (from memory).
"""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from planning.contract.plan_input import CanalChoice, Choices, Kit, Override
from planning.contract.plan_value import CanalPlan, Caution, Plan, Severity
from planning.foundation.encoding import decode, encode
from planning.instruments.iso_3630 import Use
from planning.run_sheet.graph import Step
from planning.whole_tooth.plan import plan
from tests.planning.given import OPEN_30, canal, confirmed, hand, kit, molar, rotary, technique

CORONAL = (rotary(25, 10, Use.CORONAL), rotary(25, 8, Use.CORONAL))
SERIES = (25, 30, 35, 40)
HANDS = (8, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60)


def having(series: Sequence[int] = SERIES, hands: Sequence[int] = HANDS) -> Kit:
    return kit(*CORONAL, *(rotary(size, 4) for size in series), hands=hands)


def incisor(of: Kit, size: int | None = None, key: str = "crown-down") -> Plan:
    choices = Choices(needle=OPEN_30, canals=(CanalChoice(canal="single", final_size=size, reason="as asked"),))
    single = canal("single", "single", *confirmed(22.0, 21.0, 1.0, "edge"), point="edge")
    return plan(molar(tooth="11", canals=(single,), roots=(), kit=of, choices=choices, technique=technique(key)))


def phases(of: CanalPlan) -> set[str]:
    return {node.phase for node in of.run_sheet.nodes.values() if isinstance(node, Step)}


def lacking(planned: Plan) -> list[Caution]:
    return [caution for caution in planned.cautions if caution.code == "kit-lacks-size"]


def test_the_smallest_of_the_range_that_the_kit_can_make_is_proposed_and_that_is_said() -> None:
    planned = incisor(having(hands=(8, 10, 15, 20, 25, 30, 40, 45)))
    canal_plan = planned.canals[0]
    assert (
        canal_plan.size_range.least,
        canal_plan.size_range.most,
        canal_plan.size_range.proposed,
        canal_plan.final_size,
    ) == (35, 60, 40, 40)
    assert [each.says for each in canal_plan.size_range.reasons if each.code == "kit"] == [
        "The kit has no hand 35 for 35: 40 is proposed, the smallest from 35 to 60 that it can make."
    ]
    assert lacking(planned) == []
    assert phases(canal_plan) >= {"ascending", "confirm", "fill"}


def test_a_kit_that_has_the_proposal_says_nothing() -> None:
    canal_plan = incisor(having()).canals[0]
    assert canal_plan.final_size == 35
    assert "kit" not in {each.code for each in canal_plan.size_range.reasons}


@pytest.mark.parametrize(
    ("series", "hands", "size", "says", "do"),
    [
        (
            (25, 30, 35, 40),
            (8, 10, 15, 20),
            None,
            "single: the kit has no hand 35, which a final size of 35 needs.",
            "Add it to the kit, or work with another kit: of 35 to 60 it makes none.",
        ),
        (
            (25, 30, 35, 40),
            HANDS,
            45,
            "single: the kit has no 45/.04, which a final size of 45 needs.",
            "Add it to the kit, or choose 35 or 40, which it can make.",
        ),
        (
            # The way to 50 leads over 45; 40 has no hand size to be confirmed with.
            (25, 30, 35, 40, 50),
            (8, 10, 15, 20, 25, 30, 35),
            50,
            "single: the kit has no 45/.04, no hand 50, which a final size of 50 needs.",
            "Add it to the kit, or choose 35, which it can make.",
        ),
    ],
)
def test_what_goes_by_a_size_that_the_kit_lacks_waits_and_the_rest_is_planned(
    series: Sequence[int], hands: Sequence[int], size: int | None, says: str, do: str
) -> None:
    planned = incisor(having(series, hands), size)
    canal_plan, (bar,) = planned.canals[0], lacking(planned)
    assert (bar.says, bar.do, bar.severity, bar.may_override) == (says, do, Severity.STOP, False)
    assert [each.code for each in canal_plan.withheld] == ["kit-lacks-size"]
    assert (canal_plan.final_size, canal_plan.obturation) == (size or 35, None)
    open_ = {"explore", "length", "glide-path", "coronal-flaring", "length-again", "first-binder"}
    assert phases(canal_plan) == open_ - ({"first-binder"} if max(hands) == 20 else set())
    assert canal_plan.needle is not None
    assert "needle-wide" not in {each.code for each in planned.cautions}
    assert decode(Plan, encode(planned)) == planned


def test_other_canals_of_the_tooth_go_on() -> None:
    choices = Choices(needle=OPEN_30, canals=(CanalChoice(canal="P", final_size=45, reason="wide"),))
    planned = plan(molar(kit=having(), choices=choices))
    assert {canal_plan.canal: [each.code for each in canal_plan.withheld] for canal_plan in planned.canals} == {
        "MB1": [],
        "MB2": [],
        "DB": [],
        "P": ["kit-lacks-size"],
    }
    assert phases(planned.canals[2]) >= {"ascending", "fill"}


def test_by_hand_the_sizes_on_the_way_and_those_of_stepping_back_count() -> None:
    """To 35 by hand 10 to 35, then back by 40, 45 and 50."""
    planned = incisor(having(hands=(8, 10, 15, 20, 25, 35, 40, 50)), key="step-back")
    (bar,) = lacking(planned)
    assert bar.says == "single: the kit has no hand 30, no hand 45, which a final size of 35 needs."
    assert phases(planned.canals[0]) == {"explore", "length"}


def test_a_size_that_a_supervisor_chose_for_a_wide_canal_waits_for_the_kit_as_well() -> None:
    wide = canal("single", "single", *confirmed(22.0, 21.0, 1.0, "edge"), point="edge", first_binder_size=60)
    word = Override(code="wide-canal", canal="single", reason="own cone", final_size=80)
    planned = plan(molar(tooth="11", canals=(wide,), roots=(), kit=having(), overrides=(word,)))
    assert [each.code for each in planned.canals[0].withheld] == ["kit-lacks-size"]
    assert hand(80).name not in {row.instrument.name for row in planned.stop_table}
