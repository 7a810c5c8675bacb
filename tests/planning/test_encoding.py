"""The encoder: values survive it, equal values are written alike, and what is wrong is named where it is."""

from __future__ import annotations

import inspect
import json
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from jsonschema import Draft202012Validator  # type: ignore[import-untyped]

from planning.contract.plan_input import PlanInput
from planning.contract.plan_value import Plan
from planning.foundation.encoding import Mode, canonical_text, decode, digest, encode, json_schema, kept_schema
from planning.foundation.encoding.shapes import shape_of_list
from planning.foundation.errors import LengthOutOfBounds, NotUnderstood
from planning.lengths.readings import ApexLocator, Length, PreOperativeImage, Ratio, Reading
from planning.run_sheet.graph import Ask, RunSheet
from tests.draws import draws

# What the encoder reads of a bound beside its limits is nothing to the drawing of values.
pytestmark = pytest.mark.filterwarnings("ignore:Ignoring unsupported _Named")
TEXTS = st.text(st.characters(exclude_categories=["Cs", "Cc"]), max_size=8)
NUMBERS = st.floats(-1e9, 1e9)
WHOLE_NUMBERS = st.integers(-(2**53) + 1, 2**53 - 1)
# What JSON can carry. This holds for every test of the run that draws plain types by annotation.
st.register_type_strategy(str, TEXTS)
st.register_type_strategy(float, NUMBERS)
st.register_type_strategy(int, WHOLE_NUMBERS)

VALUES: st.SearchStrategy[Any] = st.one_of(*(st.from_type(each) for each in (PlanInput, RunSheet, Length, Plan)))
"""Any value of the types that are stored, drawn from their annotations alone."""


def problems(type_: Any, data: object) -> dict[str, str]:
    with pytest.raises(NotUnderstood) as refused:
        decode(type_, data)
    return {"/".join(map(str, pointer)): says for pointer, _, says in refused.value.faults}


@given(VALUES)
@settings(max_examples=draws(60), deadline=None)
def test_a_value_comes_back_as_it_went(value: Any) -> None:
    read = decode(type(value), json.loads(canonical_text(value)))
    assert read == value
    assert canonical_text(read) == canonical_text(value)


@given(VALUES)
@settings(max_examples=draws(40), deadline=None)
def test_what_is_written_fits_its_own_schema(value: Any) -> None:
    """Judge: the jsonschema package."""
    for mode in Mode:
        Draft202012Validator(json_schema(type(value), mode)).validate(encode(value))


@pytest.mark.parametrize("type_", [PlanInput, Plan, RunSheet, Length, Reading])
def test_schemas_are_valid(type_: Any) -> None:
    for mode in Mode:
        Draft202012Validator.check_schema(json_schema(type_, mode))


def test_equal_values_are_written_alike() -> None:
    whole = PreOperativeImage(tooth_mm=21, reference_point="MB cusp")
    broken = PreOperativeImage(tooth_mm=21.0, reference_point="MB cusp")
    zero = decode(Unbounded, {"value": -0.0})
    assert whole == broken
    assert canonical_text(whole) == canonical_text(broken)
    assert canonical_text(zero) == canonical_text(Unbounded(value=0))


def test_the_text_has_sorted_keys_and_no_blanks() -> None:
    text = canonical_text(PreOperativeImage(tooth_mm=21.5, reference_point="Höcker"))
    assert text == (
        '{"after_flaring":false,"interval":null,"method":"pre_operative_image","reference_point":"Höcker","tooth_mm":21.5}'
    )


@pytest.mark.parametrize("number", [float("nan"), float("inf"), float("-inf")])
def test_a_number_that_json_cannot_hold_is_not_written(number: float) -> None:
    with pytest.raises(ValueError, match="JSON compliant"):
        canonical_text(PreOperativeImage(tooth_mm=number, reference_point="MB cusp"))


def test_the_digest_is_sha_256() -> None:
    """FIPS 180-4, the example message 'abc'."""
    assert digest("abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"


@dataclass(frozen=True)
class Unbounded:
    value: float


LOCATOR = {"method": "apex_locator", "read_mm": 21.5, "repeat_mm": 21.5, "mark": "apex", "reference_point": "P cusp"}


ASK = {
    "id": "again",
    "phase": "crown-down",
    "question": {"test": "at_length", "nodes": ["a"]},
    "exits": {"yes": "next"},
    "kind": "ask",
}


@pytest.mark.parametrize(
    ("changed", "where", "says"),
    [
        ({"read_mm": "21.5"}, "read_mm", "Must be a number."),
        ({"read_mm": True}, "read_mm", "Must be a number."),
        ({"stable": 1}, "stable", "Must be true or false."),
        ({"mark": "red"}, "mark", "Must be 'apex' or 'constriction'."),
        ({"reference_point": 3}, "reference_point", "Must be text."),
        ({"reference_point": "a\x00b"}, "reference_point", "Must not hold control characters."),
        ({"reference_point": "\ud800"}, "reference_point", "Must not hold control characters."),
        ({"reference_point": "x" * 2001}, "reference_point", "At most 2000 characters."),
        ({"colour": "red"}, "colour", "Is not known here."),
        ({"method": "guess"}, "method", "Must be 'apex_locator'."),
    ],
)
def test_what_is_wrong_is_named_where_it_is(changed: dict[str, Any], where: str, says: str) -> None:
    assert problems(ApexLocator, {**LOCATOR, **changed}) == {where: says}


@pytest.mark.parametrize("number", [float("nan"), float("inf"), 1e308, 10**400, -0.1, 36.1])
def test_a_number_beyond_its_row_is_refused_with_the_row_s_own_sentence(number: float) -> None:
    with pytest.raises(LengthOutOfBounds, match=r"^A length lies between 10 and 36 mm\. Check") as refused:
        decode(ApexLocator, {**LOCATOR, "read_mm": number})
    assert refused.value.pointer == ("read_mm",)


@pytest.mark.parametrize("number", [float("nan"), float("inf"), float("-inf"), 1e308, 10**400])
def test_a_number_of_no_row_is_finite_all_the_same(number: float) -> None:
    assert problems(Unbounded, {"value": number}) == {"value": "Must be a finite number of at most 1000000000."}


def test_what_was_kept_is_read_by_the_rows_of_its_day() -> None:
    assert decode(ApexLocator, {**LOCATOR, "read_mm": 40.0}, Mode.KEPT).read_mm == 40.0
    with pytest.raises(NotUnderstood):
        decode(ApexLocator, {**LOCATOR, "colour": "red"}, Mode.KEPT)


def test_what_is_kept_whatever_it_measured_is_described_without_the_rows_limits() -> None:
    bounded, kept = json_schema(Reading), kept_schema(Reading, Mode.GIVEN)
    outside = {**LOCATOR, "read_mm": 40.0}
    assert not Draft202012Validator(bounded).is_valid(outside)
    assert Draft202012Validator(kept).is_valid(outside)
    assert not Draft202012Validator(kept).is_valid({**outside, "colour": "red"})
    assert not set(kept["$defs"]) & {name for name, part in bounded["$defs"].items() if "minimum" in str(part)}


def test_a_whole_number_may_be_written_with_a_point_nought() -> None:
    assert decode(Whole, {"size": 25.0}) == Whole(size=25)
    assert problems(Whole, {"size": 25.5}) == {"size": "Must be a whole number."}
    assert problems(Whole, {"size": 2**53}) == {"size": "Must be a whole number."}


def test_all_problems_are_told_at_once_with_their_paths() -> None:
    by_path = problems(PlanInput, {"tooth": 26, "canals": [{"name": "P", "readings": [{"method": "x"}]}], "extra": 1})
    assert by_path["tooth"] == "Must be text."
    assert by_path["canals/0/root"] == "Fill this in."
    assert by_path["canals/0/readings/0/method"].startswith("Must be 'pre_operative_image', 'ratio',")
    assert by_path["kit"] == "Fill this in."
    assert by_path["extra"] == "Is not known here."


def test_a_reading_must_say_its_method() -> None:
    by_path = problems(Reading, {"tooth_mm": 21.5, "reference_point": "P cusp"})
    assert by_path["method"].startswith("Fill this in. Must be 'pre_operative_image'")
    assert problems(Reading, ["ratio"]) == {"": "Must be an object."}


def test_a_reading_is_told_by_its_method() -> None:
    data = {
        "method": "ratio",
        "instrument_mm": 20,
        "instrument_on_image_mm": 22,
        "tooth_on_image_mm": 24.2,
        "reference_point": "P cusp",
    }
    assert isinstance(decode(Reading, data), Ratio)


def test_an_unknown_key_named_like_the_method_is_named_where_it_is() -> None:
    ratio = {"method": "ratio", "instrument_mm": 20, "instrument_on_image_mm": "22", "tooth_on_image_mm": 24.2}
    assert problems(tuple[Reading, ...], [{**ratio, "reference_point": "P cusp", "ratio": {}}]) == {
        "0/instrument_on_image_mm": "Must be a number.",
        "0/ratio": "Is not known here.",
    }


@pytest.mark.parametrize("below", ["next", ["next"], {"next": 1}])
def test_a_wrong_key_of_a_map_is_named(below: object) -> None:
    assert set(problems(Ask, {**ASK, "exits": {"perhaps": below}})) == {"exits/perhaps"}


def test_a_text_or_an_object_is_told_by_what_was_sent() -> None:
    assert problems(TextOrWhole, {"it": ["a"]}) == {"it": "Must be text."}
    assert problems(TextOrWhole, {"it": {"size": "a"}}) == {"it/size": "Must be a whole number."}
    assert decode(TextOrWhole, {"it": {"size": 1}}) == TextOrWhole(it=Whole(size=1))
    assert encode(TextOrWhole(it="a")) == {"it": "a"}
    assert encode(TextOrWhole(it=Whole(size=1))) == {"it": {"size": 1}}


def test_what_nothing_tells_apart_is_not_read() -> None:
    with pytest.raises(TypeError, match="Nothing tells"):
        decode(Whole | Checked, {"size": 1})


@pytest.mark.parametrize("version", [True, "1", 2, 1.5])
def test_a_schema_version_that_is_not_known_is_refused(version: object) -> None:
    assert set(problems(RunSheet, {"canal": "P", "start": "a", "schema_version": version})) == {"schema_version"}


def test_a_refusal_of_the_value_itself_keeps_its_code_and_gets_its_path() -> None:
    with pytest.raises(LengthOutOfBounds) as refused:
        decode(Holder, {"inside": [{"length_mm": 20}, {"length_mm": 99}]})
    assert refused.value.pointer == ("inside", 1, "length_mm")
    assert refused.value.code == "length-out-of-bounds"


def test_docstrings_describe_the_fields() -> None:
    schema = json_schema(PlanInput)["$defs"]
    assert schema["PlanInputRequest"]["properties"]["isolated"]["description"].startswith("Dam in place")
    assert "`unsettled`: Readings disagree" in json_schema(Length)["$defs"]["LengthState"]["description"]


def test_reading_a_value_reads_no_source(monkeypatch: pytest.MonkeyPatch) -> None:
    """Only a description needs what classes say of themselves; asked for it, the sources are read."""
    read: list[Any] = []
    lines = inspect.getsourcelines

    def noted(part: Any) -> tuple[list[str], int]:
        read.append(part)
        return lines(part)

    monkeypatch.setattr(inspect, "getsourcelines", noted)
    shape_of_list.__wrapped__(RunSheet, Mode.GIVEN)
    assert read == []
    shape_of_list.__wrapped__(RunSheet, Mode.GIVEN, described=True)
    assert RunSheet in read


def test_what_may_be_left_out_is_always_there_in_an_answer() -> None:
    given_, answered = json_schema(PlanInput), json_schema(PlanInput, Mode.ANSWERED)
    assert "roots" not in given_["$defs"]["PlanInputRequest"]["required"]
    assert "roots" in answered["$defs"]["PlanInput"]["required"]
    assert "method" in given_["$defs"]["RatioRequest"]["required"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Whole:
    size: int


@dataclass(frozen=True, slots=True, kw_only=True)
class TextOrWhole:
    it: str | Whole


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked:
    length_mm: float

    def __post_init__(self) -> None:
        if self.length_mm > 36:
            raise LengthOutOfBounds(reason="A length like this cannot be.", at=("length_mm",))


@dataclass(frozen=True, slots=True, kw_only=True)
class Holder:
    inside: tuple[Checked, ...]


def test_source_is_read_by_one_thread_at_a_time(monkeypatch: pytest.MonkeyPatch) -> None:
    """CPython 3.11 fails where two threads parse source at once: "AST constructor recursion depth mismatch"."""
    reading: list[int] = []
    together: list[int] = []
    read = inspect.getsource

    def noted(of: Any) -> str:
        reading.append(1)
        together.append(len(reading))
        try:
            return read(of)
        finally:
            reading.pop()

    monkeypatch.setattr(inspect, "getsource", noted)
    with ThreadPoolExecutor(4) as pool:
        described = list(pool.map(json_schema, [PlanInput] * 8))
    assert described == [described[0]] * 8
    assert (len(together) > 100, max(together)) == (True, 1)
