"""Whatever is sent is answered or refused; nothing breaks."""

from __future__ import annotations

from copy import deepcopy
from typing import Any

import pytest
from hypothesis import event, given, settings
from hypothesis import strategies as st

from planning.api import answers
from planning.api.requests import PlanRequest
from planning.foundation import tables
from planning.foundation.encoding import canonical_text, decode
from planning.foundation.errors import PlanningError
from planning.foundation.quantities import um
from planning.run_sheet.graph import Step
from tests.api.compute import plan_request

EXTREMES = [0, -1, -1e308, 1e308, 5e-324, 1e-9, 1e9, 0.5, 2**53 - 1]
SENT = plan_request()


def outcome(sent: dict[str, Any]) -> str:
    """The plan's text or the refusal's code; anything else is a crash and goes through."""
    try:
        return canonical_text(answers.tooth_plan(decode(PlanRequest, sent)))
    except PlanningError as refusal:
        return refusal.code


def leaves(value: Any, path: tuple[str | int, ...] = ()) -> list[tuple[str | int, ...]]:
    """The path of everything in a request that holds nothing further."""
    if isinstance(value, dict | list) and value:
        inside = value.items() if isinstance(value, dict) else enumerate(value)
        return [leaf for key, each in inside for leaf in leaves(each, (*path, key))]
    return [path]


def changed(changes: dict[tuple[str | int, ...], Any]) -> dict[str, Any]:
    sent = deepcopy(SENT)
    for path, value in changes.items():
        inside: Any = sent
        for part in path[:-1]:
            inside = inside[part]
        inside[path[-1]] = value
    return sent


@pytest.mark.parametrize("key", sorted(tables.published()))
@pytest.mark.parametrize("value", EXTREMES)
def test_no_threshold_breaks_a_plan(key: str, value: float) -> None:
    assert outcome(changed({("thresholds",): {key: value}}))


@given(st.data())
@settings(max_examples=100)
def test_with_any_allowed_figure_no_stop_lies_beyond_the_working_length(data: st.DataObject) -> None:
    published = tables.published()
    key = data.draw(st.sampled_from(sorted(published)))
    figure = published[key].value
    own = data.draw(st.floats(figure / 3, figure * 3) | st.sampled_from([figure, figure * 2, figure * 3]))
    sent = changed({("thresholds",): {key: own}})
    try:
        plan = answers.tooth_plan(decode(PlanRequest, sent))
    except PlanningError as refusal:
        event(refusal.code)
        return
    for canal in plan.canals:
        stops = [node.stop_um for node in canal.run_sheet.nodes.values() if isinstance(node, Step) and node.stop_um]
        assert not stops or canal.length.stop_mm is not None
        assert all(stop <= um(canal.length.stop_mm or 0) for stop in stops)


JSON = st.one_of(
    st.none(),
    st.booleans(),
    st.sampled_from([*EXTREMES, 4, 10, 20, 25, 30, 35, 200]),
    st.floats(allow_nan=False, allow_infinity=False),
    st.text(max_size=5),
    st.sampled_from(["clinic", "block", "extracted", "MB1", "P", "top", "reciprocating", "hand", "2-1", "step-back"]),
    st.just([]),
    st.just({}),
)


@given(st.dictionaries(st.sampled_from(leaves(SENT)), JSON, min_size=1, max_size=4))
@settings(max_examples=300)
def test_no_value_anywhere_breaks_a_plan(changes: dict[tuple[str | int, ...], Any]) -> None:
    assert outcome(changed(changes))
