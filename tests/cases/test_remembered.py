"""The same question is computed once; another one is computed, and no more is kept than may be. Counted, not timed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from cases.domain.errors import NotUsable
from cases.mapping.plans import plan_input_of, plan_of
from cases.models import Case, Person, ToothPlanVersion
from cases.services.planning import plans, remembered
from cases.services.planning.plan_input import Asked
from planning.contract.plan_input import PlanInput
from planning.contract.plan_value import Plan
from planning.foundation.encoding import canonical_text
from planning.whole_tooth.plan import plan
from tests.cast import with_size
from tests.planning.given import molar


@pytest.fixture(autouse=True)
def nothing_remembered() -> Iterator[None]:
    remembered.kept.clear()
    yield
    remembered.kept.clear()


@pytest.fixture
def computed(monkeypatch: pytest.MonkeyPatch) -> list[PlanInput]:
    """What was computed so far."""
    inputs: list[PlanInput] = []

    def counted(plan_input: PlanInput) -> Plan:
        inputs.append(plan_input)
        return plan(plan_input)

    monkeypatch.setattr(remembered, "plan", counted)
    return inputs


def test_a_preview_asked_for_again_and_its_version_are_computed_once(
    priya: Person, molar: Case, asked: Asked, computed: list[PlanInput]
) -> None:
    first = plans.preview(actor=priya, case=molar, asked=asked).plan
    assert canonical_text(plans.preview(actor=priya, case=molar, asked=asked).plan) == canonical_text(first)
    version, _ = plans.propose(actor=priya, case=molar, asked=asked)
    assert (version.output_text, len(computed)) == (canonical_text(first), 1)


def test_whatever_is_other_in_the_input_is_computed(computed: list[PlanInput]) -> None:
    plan_input = molar(samples=0)
    others = [
        plan_input,
        replace(plan_input, seed=plan_input.seed + 1),
        replace(plan_input, samples=plan_input.samples + 1),
    ]
    made = [remembered.planned(each).plan for each in (*others, *others)]
    assert computed == others
    assert [canonical_text(each) for each in made[:3]] == [canonical_text(plan(each)) for each in others]
    assert made[:3] == made[3:]


def test_the_one_asked_for_longest_ago_is_forgotten(computed: list[PlanInput], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(remembered.kept, "most", 2)
    first, second, third = (replace(molar(samples=0), seed=seed) for seed in (1, 2, 3))
    for plan_input in (first, second, first, third, first, second):
        remembered.planned(plan_input)
    assert computed == [first, second, third, second]


def test_a_refusal_is_not_remembered(monkeypatch: pytest.MonkeyPatch) -> None:
    def refuses(plan_input: PlanInput) -> Plan:
        raise NotUsable(reason="No.")

    plan_input = molar(samples=0)
    with monkeypatch.context() as patched:
        patched.setattr(remembered, "plan", refuses)
        with pytest.raises(NotUsable):
            remembered.planned(plan_input)
    assert canonical_text(remembered.planned(plan_input).plan) == canonical_text(plan(plan_input))


def test_what_a_version_was_made_from_and_says_is_read_once_and_another_is_another(
    priya: Person, proposed: ToothPlanVersion, asked: Asked
) -> None:
    other, _ = plans.propose(actor=priya, case=proposed.case, asked=with_size(asked, "P", 40))
    versions = (proposed, other)
    texts = [(each.input_text, each.output_text) for each in versions]

    def read() -> list[tuple[str, str]]:
        rows = [ToothPlanVersion.objects.get(pk=each.pk) for each in versions]
        with CaptureQueriesContext(connection) as questions:
            values = [(canonical_text(plan_input_of(row)), canonical_text(plan_of(row))) for row in rows]
        asked_for.append(len(questions))
        return values

    asked_for: list[int] = []
    assert read() == read() == texts
    assert asked_for[1] == 0
