"""A quantity has one row: what it holds is accepted all the way to a plan, what lies beyond is refused at the door.

Generated from the annotations of what a plan is made from. The rows' figures are judgements of this program.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from typing import Any, get_args, get_type_hints

import pytest

from planning.contract.canal_facts import WallInput, WidthInput
from planning.contract.plan_input import CanalChoice, Override, PastInsertion, PlanInput, Progress, RecordedDepth
from planning.foundation.bounds import Bound, bounds, of_fields, outside, within
from planning.foundation.encoding import decode, encode, json_schema
from planning.foundation.errors import NotUnderstood, OutOfBounds, PlanningError
from planning.instruments.iso_3630 import DiameterAt
from planning.lengths.readings import ApexLocator, DirectSight, ImageInterval, PreOperativeImage, Ratio
from planning.run_sheet.graph import Walked
from planning.whole_tooth.plan import plan
from tests.planning.given import CHECK_KIT, four_canals, molar, rotary


def filled() -> PlanInput:
    """The check molar with something in every bounded field."""
    readings = (
        Ratio(instrument_mm=20, instrument_on_image_mm=20, tooth_on_image_mm=20.5, reference_point="MB cusp"),
        ApexLocator(read_mm=20, repeat_mm=20, mark="apex", reference_point="MB cusp"),
        DirectSight(seen_mm=20, reference_point="MB cusp"),
    )
    first, second, *others = four_canals()
    on_image, *more = first.readings
    assert isinstance(on_image, PreOperativeImage)
    on_image = replace(on_image, interval=ImageInterval(least_mm=20.0, most_mm=21.0, rests_on="instrument"))
    first = replace(
        first,
        readings=(on_image, *more, *readings),
        curvature_deg=12.0,
        curve_start_mm=12.0,
        orifice_mm=9.0,
        apex_mm=0.3,
        curve_radius_mm=10.0,
        curve_from_end_mm=5.0,
        widths=(WidthInput(from_end_mm=0.0, narrow_mm=0.2, wide_mm=0.3),),
        wall=WallInput(thickness_mm=1.0, from_end_mm=3.0),
        first_binder_size=20,
        felt=(RecordedDepth(node="explore", depth_mm=10.0, stop_mm=19.0),),
        progress=Progress(
            at="explore",
            phase="explore",
            walked_before=Walked(),
            length_mm=19.0,
            made=(PastInsertion(step="explore", phase="explore", instrument="10-02", depth_mm=10.0, stop_mm=19.0),),
        ),
    )
    assert second.junction is not None
    second = replace(second, junction=replace(second.junction, at_length_mm=19.0))
    shaped = (DiameterAt(from_tip_mm=0.0, diameter_mm=0.3), DiameterAt(from_tip_mm=16.0, diameter_mm=0.9))
    variable = rotary(30, 6, diameters=shaped, largest_flute_mm=1.0, uses=1, most_uses=8)
    kit = replace(CHECK_KIT, instruments=(variable, *CHECK_KIT.instruments))
    choices = replace(
        molar().choices,
        series_taper=4,
        glide_path_to_size=20,
        canals=(CanalChoice(canal="MB1", final_size=30, reason="check"),),
    )
    opened = Override(code="wide-canal", canal="DB", reason="check", final_size=45)
    return molar(canals=(first, second, *others), kit=kit, choices=choices, overrides=(opened,))


FILLED = filled()


def places(value: Any, at: tuple[str | int, ...] = ()) -> Iterator[tuple[tuple[str | int, ...], str, Bound]]:
    """Every bounded number of the value: its path, its field and its row."""
    if isinstance(value, tuple):
        for number, item in enumerate(value):
            yield from places(item, (*at, number))
    elif is_dataclass(value) and not isinstance(value, type):
        for field in fields(value):
            if bound := of_fields(type(value)).get(field.name):
                yield (*at, field.name), f"{type(value).__name__}.{field.name}", bound
            else:
                yield from places(getattr(value, field.name), (*at, field.name))


ONCE = {field: (path, bound) for path, field, bound in reversed(list(places(FILLED)))}


def put(data: Any, path: tuple[str | int, ...], value: Any) -> Any:
    """The JSON data with one place changed."""
    if not path:
        return value
    if isinstance(data, list):
        return [put(item, path[1:], value) if number == path[0] else item for number, item in enumerate(data)]
    return {key: put(item, path[1:], value) if key == path[0] else item for key, item in data.items()}


def types_in(type_: Any) -> Iterator[Any]:
    for inner in get_args(type_):
        yield from types_in(inner)
    if is_dataclass(type_):
        yield type_
        for hint in get_type_hints(type_).values():
            yield from types_in(hint)


def test_every_bounded_field_is_in_the_check_input() -> None:
    every = {f"{each.__name__}.{name}" for each in set(types_in(PlanInput)) for name in of_fields(each)}
    assert every == set(ONCE)


UNBOUNDED = {
    "PlanInput.seed": "any whole number draws as well as any other",
}
"""Numbers that no row bounds, each with why."""


def test_every_other_number_says_why_it_has_no_row() -> None:
    def numeric(hint: Any) -> bool:
        return hint in (int, float) or any(numeric(each) for each in get_args(hint) if each is not type(None))

    numbers = {
        f"{each.__name__}.{field.name}"
        for each in set(types_in(PlanInput))
        for field in fields(each)
        if numeric(get_type_hints(each)[field.name])
    }
    mappings = {"PlanInput.thresholds", "Walked.passes", "Walked.depths_um"}
    assert numbers - set(ONCE) - mappings == set(UNBOUNDED)


@pytest.mark.parametrize("field", sorted(ONCE))
def test_at_the_bounds_it_is_accepted_all_the_way(field: str) -> None:
    """Whatever else a plan may be refused for, it is never for a bound that the door let pass."""
    path, bound = ONCE[field]
    for value in (bound.least, bound.most):
        plan_input = decode(PlanInput, put(encode(FILLED), path, value))
        assert list(outside(plan_input)) == []
        assert code_of(plan_input) in {None, *OTHER_RULES.get(field, ())}


def code_of(plan_input: PlanInput) -> str | None:
    """What it is refused for, if it is."""
    try:
        plan(plan_input)
    except PlanningError as refusal:
        return refusal.code
    return None


# Rules between two numbers, or of the trade, that no bound of one quantity can hold.
CANNOT_BE = ("instrument-not-described",)
NO_TECHNIQUE = ("technique-not-usable", "too-much-work", "kit-lacks-instrument")
OTHER_RULES: dict[str, tuple[str, ...]] = {
    "CanalChoice.final_size": ("choice-not-possible",),
    "CanalInput.apex_mm": ("charted-not-planned",),
    "CanalInput.orifice_mm": ("canals-do-not-fit",),
    "Choices.glide_path_to_size": ("kit-lacks-instrument", "choice-not-possible"),
    "Choices.series_taper": ("kit-lacks-instrument",),
    "DiameterAt.diameter_mm": CANNOT_BE,
    "DiameterAt.from_tip_mm": CANNOT_BE,
    "DirectSight.seen_mm": ("canals-do-not-fit",),
    "ImageInterval.least_mm": ("reading-not-usable",),
    "ImageInterval.most_mm": ("reading-not-usable",),
    "Instrument.cutting_part_mm": CANNOT_BE,
    "Instrument.largest_flute_mm": CANNOT_BE,
    "Instrument.length_mm": CANNOT_BE,
    "Junction.at_length_mm": ("junction-beyond-canal",),
    "Junction.from_terminus_mm": ("junction-beyond-canal",),
    "Override.final_size": ("choice-not-possible",),
    "Phase.expected_passes": NO_TECHNIQUE,
    "Phase.from_size": NO_TECHNIQUE,
    "Phase.most_passes": NO_TECHNIQUE,
    "Phase.step_mm": NO_TECHNIQUE,
    "Phase.steps": NO_TECHNIQUE,
    "Phase.to_size": NO_TECHNIQUE,
    "PreOperativeImage.tooth_mm": ("reading-not-usable",),
    "Ratio.instrument_mm": ("reading-not-usable",),
    "Ratio.instrument_on_image_mm": ("reading-not-usable",),
    "Technique.recapitulate_size": NO_TECHNIQUE,
    "Technique.series_above_glide_path": NO_TECHNIQUE,
    "Technique.series_sizes_up": NO_TECHNIQUE,
    "WidthInput.narrow_mm": ("canals-do-not-fit",),
    "WidthInput.wide_mm": ("canals-do-not-fit",),
}


@pytest.mark.parametrize("field", sorted(ONCE))
def test_just_beyond_it_is_refused_at_the_door_with_the_row_s_sentence(field: str) -> None:
    path, bound = ONCE[field]
    step = 1 if bound.whole else 0.001
    for value in (bound.least - step, bound.most + step):
        with pytest.raises(OutOfBounds) as refused:
            decode(PlanInput, put(encode(FILLED), path, value))
        assert (str(refused.value), refused.value.pointer) == (bound.sentence, path)
        with pytest.raises(OutOfBounds, match="lies between"):
            plan(put_value(FILLED, path, value))


def put_value(value: Any, path: tuple[str | int, ...], new: Any) -> Any:
    if not path:
        return new
    step, *rest = path
    if isinstance(step, int):
        return tuple(put_value(item, tuple(rest), new) if n == step else item for n, item in enumerate(value))
    return replace(value, **{str(step): put_value(getattr(value, str(step)), tuple(rest), new)})


@pytest.mark.parametrize("field", sorted(ONCE))
@pytest.mark.parametrize("junk", [math.nan, math.inf, -math.inf, 10**400, "20", "NaN", True, [20]])
def test_what_is_no_number_is_refused(field: str, junk: Any) -> None:
    path, _ = ONCE[field]
    with pytest.raises((OutOfBounds, NotUnderstood)) as refused:
        decode(PlanInput, put(encode(FILLED), path, junk))
    assert refused.value.pointer == path


def test_negative_nought_is_nought() -> None:
    path, _ = ONCE["WallInput.from_end_mm"]
    plan_input = decode(PlanInput, put(encode(FILLED), path, -0.0))
    wall = plan_input.canals[0].wall
    assert wall is not None
    assert math.copysign(1, wall.from_end_mm) == 1


def test_halves_of_what_is_counted_are_refused() -> None:
    path, _ = ONCE["CanalInput.first_binder_size"]
    with pytest.raises(NotUnderstood, match="whole number"):
        decode(PlanInput, put(encode(FILLED), path, 20.5))


def test_the_description_says_the_same() -> None:
    """JSON Schema 2020-12: `minimum` and `maximum` include their value, as the rows do."""
    parts = json_schema(PlanInput)["$defs"]
    for field, (_, bound) in ONCE.items():
        kind, name = field.split(".")
        part = parts.get(f"{kind}Request") or parts[kind]
        described = part["properties"][name]
        numbers = [each for each in (described, *described.get("anyOf", ())) if "minimum" in each]
        assert [(each["minimum"], each["maximum"]) for each in numbers] == [(bound.least, bound.most)], field


@pytest.mark.parametrize("key", sorted(bounds()))
def test_a_row_has_a_least_below_its_most(key: str) -> None:
    assert within(key).least < within(key).most
