"""The description tells the truth of every operation alike: bodies take no other keys, answers may gain some."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from typing import Any

from jsonschema import Draft202012Validator  # type: ignore[import-untyped]

from cases.api.problem_codes import problem_codes
from cases.api.problems import MEDIA_TYPE
from cases.api.words import base_of, words
from tests.api.judged import codes, telling
from tests.api.test_cases_description import description

METHODS = ("get", "post", "put", "patch", "delete")


def operations() -> list[tuple[str, dict[str, Any]]]:
    return [
        (f"{method} {address}", operation)
        for address, path in description()["paths"].items()
        for method, operation in path.items()
        if method in METHODS
    ]


def reached(part: Any) -> set[str]:
    """Names of the schemas that something refers to, by others too."""
    names: set[str] = set()
    more = _named(part)
    while more:
        names |= more
        more = {name for each in more for name in _named(description()["components"]["schemas"][each])} - names
    return names


def _named(part: Any) -> set[str]:
    return set(re.findall(r'"#/components/schemas/([^"]+)"', json.dumps(part)))


def test_a_body_takes_no_other_keys_and_an_answer_may_gain_some() -> None:
    schemas = description()["components"]["schemas"]
    sent = reached([operation.get("requestBody") for _, operation in operations()])
    answered = reached([operation["responses"] for _, operation in operations()])
    objects = {name for name, schema in schemas.items() if "properties" in schema}
    assert len(objects & sent) > 100
    assert not objects & sent & answered
    assert {name for name in objects & sent if schemas[name].get("additionalProperties") is not False} == set()
    assert {name for name in objects & answered if schemas[name].get("additionalProperties") is False} == set()


def test_what_is_read_is_described_with_its_tag_and_its_304() -> None:
    for name, operation in operations():
        conditions = {each["name"] for each in operation.get("parameters", []) if each["in"] == "header"}
        reads = name.startswith("get ")
        assert ("304" in operation["responses"], "If-None-Match" in conditions) == (reads, reads), name
        if reads:
            assert "ETag" in operation["responses"]["200"]["headers"], name


def test_what_is_made_says_where_it_lies() -> None:
    """RFC 9110, 9.3.3: a 201 to a POST names it. That it lies there is asked after every one (`conftest`)."""
    made = {
        operation["operationId"]: operation["responses"]["201"]
        for name, operation in operations()
        if name.startswith("post ") and "201" in operation["responses"]
    }
    assert len(made) > 12
    # An entry of the version that is answered has no address of its own.
    assert [name for name, answer in made.items() if "Location" not in answer.get("headers", {})] == [
        "plan_version_revoke"
    ]


def test_every_operation_names_its_refusals() -> None:
    """By status: a body can be none (400), a thing can be missing (404), a condition not hold (412)."""
    for name, operation in operations():
        method, address = name.split(" ")
        answers = operation["responses"]
        parameters = {each["name"]: each.get("required", False) for each in operation.get("parameters", [])}
        assert {"400", "401", "503", "default"} <= answers.keys(), name
        assert ("404" in answers) == ("{" in address or name == "get /api/v1/key"), name
        assert ("415" in answers) == ("requestBody" in operation), name
        assert ("412" in answers) == (method == "get" or "If-Match" in parameters), name
        assert ("428" in answers) == parameters.get("If-Match", False), name
        for status in answers:
            if status >= "400" and status != "default":
                assert codes(answers[status]), name


def test_refusals_of_every_kind_are_named_somewhere() -> None:
    """What no operation names is never answered, or somebody forgot to say it beside the view."""
    named = {
        code.rpartition("/")[2]
        for _, operation in operations()
        for status, answer in operation["responses"].items()
        if "400" <= status < "600"
        for code in codes(answer)
    }
    kinds = {code for code, explained in problem_codes().items() if explained.within is None}
    assert kinds - named == {"method-not-allowed", "not-acceptable", "server-error", "step-refused"}
    assert named <= kinds


def parts_of(schema: Any, path: str) -> Iterator[tuple[str, dict[str, Any]]]:
    """Every schema within a schema, itself the first, with where it lies."""
    if isinstance(schema, list):
        for number, each in enumerate(schema):
            yield from parts_of(each, f"{path}/{number}")
    elif isinstance(schema, dict):
        yield path, schema
        for key, each in schema.items():
            if key not in {"default", "enum", "example", "examples"}:
                yield from parts_of(each, f"{path}/{key}")


def test_choices_and_schemas_have_plain_names_and_each_is_described() -> None:
    """No name that a generator made up (`…Enum`, `…Type0`), none that says nothing (`What`, `Do`, `Made`)."""
    schemas = description()["components"]["schemas"]
    assert [name for name in schemas if re.search(r"Enum|Type\d|What|Made|^Do(Request)?$", name)] == []
    within = [path for name, schema in schemas.items() for path, part in parts_of(schema, name) if "enum" in part]
    assert [path for path in within if "/" in path and "Problem" not in path] == []
    assert [name for name, schema in schemas.items() if "enum" in schema and not schema.get("description")] == []


def test_schemas_and_properties_are_described_and_no_description_waits_for_nothing() -> None:
    schemas = description()["components"]["schemas"]
    assert [name for name, schema in schemas.items() if not schema.get("description")] == []
    said = {
        (base_of(name), key, part.get("description"))
        for name, schema in schemas.items()
        for key, part in schema.get("properties", {}).items()
    }
    assert {(name, key) for name, key, text in said if not text} == set()
    for name, texts in words().items():
        for key, text in texts.items():
            if name == "schemas":
                assert any(base_of(each) == key and schemas[each]["description"] == text for each in schemas), key
            elif name == "properties":
                assert any(text == other and key == named for _, named, other in said), key
            else:
                assert (name, key, text) in said, (name, key)


LIMITS = {
    "integer": ("minimum", "maximum"),
    "number": ("minimum", "maximum"),
    "array": ("maxItems",),
}
ANY_NUMBER_IS_RIGHT = {"PlanRequest/properties/seed"}
FAR_BEYOND = 1e9  # a limit as far out as this is none


def test_whatever_is_sent_has_limits_of_its_own() -> None:
    """Numbers, lists and mappings; a text that has no closer limit has the one of all texts."""
    schemas = description()["components"]["schemas"]
    sent = reached([operation.get("requestBody") for _, operation in operations()])
    # What a device tells late is taken by the rows of its own day.
    sent = {name for name in sent if not name.endswith("RequestKept")}
    judged, without = 0, []
    for path, part in (each for name in sorted(sent) for each in parts_of(schemas[name], name)):
        wanted = LIMITS.get(str(part.get("type")), ())
        if isinstance(part.get("additionalProperties"), dict):
            wanted = ("maxProperties",)
        if part.keys() & {"enum", "const"} or path in ANY_NUMBER_IS_RIGHT:
            continue
        judged += len(wanted)
        without += [path for limit in wanted if abs(part.get(limit, FAR_BEYOND)) >= FAR_BEYOND]
    assert judged > 200
    assert set(without) == set()


def test_every_list_has_one_envelope() -> None:
    """`results` within `next` and `previous`; nothing that is answered is a bare list."""
    schemas = description()["components"]["schemas"]
    answered = {
        name: content["schema"]
        for name, operation in operations()
        for status, response in operation["responses"].items()
        if status.startswith("2")
        for kind, content in response.get("content", {}).items()
        if kind.endswith("json")
    }
    assert [name for name, schema in answered.items() if schema.get("type") == "array"] == []
    listed = [schema for schema in schemas.values() if "results" in schema.get("properties", {})]
    assert len(listed) > 15
    assert [schema for schema in listed if not {"next", "previous"} <= schema["properties"].keys()] == []


def test_every_answer_has_an_example_that_fits() -> None:
    """Judge: the jsonschema package. A success that has none is recorded by the tests of the API: see
    `tests/api/recorder.py`.
    """
    every = {"components": description()["components"]}
    judged, without = 0, []
    answers = [*((name, operation["responses"]) for name, operation in operations())]
    for name, responses in [*answers, ("shared", description()["components"]["responses"])]:
        for status, response in responses.items():
            for kind, content in response.get("content", {}).items():
                if not kind.endswith(("/json", "+json")):
                    continue
                without += [] if content.get("examples") else [f"{name} {status}"]
                judge = Draft202012Validator({**content["schema"], **every})
                for example in content.get("examples", {}).values():
                    assert [fault.message for fault in judge.iter_errors(example["value"])] == [], name
                    judged += 1
    assert judged > 100
    assert without == []


def test_every_operation_has_an_example_of_its_own_refusal_that_fits() -> None:
    """Judge: the jsonschema package, which holds the code against those that the operation names. Recorded as above."""
    every = {"components": description()["components"]}
    without = []
    for name, operation in operations():
        answers = operation["responses"]
        contents = {status: answers[status].get("content", {}).get(MEDIA_TYPE, {}) for status in telling(operation)}
        without += [] if any("examples" in content for content in contents.values()) else [name]
        for status, types in telling(operation).items():
            judge = Draft202012Validator({**contents[status].get("schema", {}), **every})
            for example in contents[status].get("examples", {}).values():
                assert [fault.message for fault in judge.iter_errors(example["value"])] == [], name
                assert example["value"]["type"] in types, name
                assert example["value"]["status"] == int(status), name
    assert without == []
