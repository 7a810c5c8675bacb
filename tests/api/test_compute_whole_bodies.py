"""Whatever is sent to an address that computes is answered or refused with a problem that says where; nothing breaks.

The addresses are found in the URL configuration, what they take in their own examples: a new one is tried by itself.
That a refusal takes no longer than a plan of one molar is held by counting calls of functions, which no other load on
the machine can change; `tests/bench/bench_refusals.py` times it.
"""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Iterator
from copy import deepcopy
from functools import cache
from typing import Any

import pytest
import yaml
from rest_framework.test import APIClient

from planning.api.parsing import MOST_BYTES
from planning.api.urls import urlpatterns
from planning.foundation.encoding.decoding import MOST_TOLD
from tests.api.compute import ROOT, plan_request, signed_in
from tests.architecture import tree
from tests.planning.memory import forget

Path = tuple[str | int, ...]
MANY = 10_000
LONG = "x" * 1_000_000
ADDRESSES = sorted(str(each.pattern) for each in urlpatterns if str(each.pattern).startswith("compute/"))


@cache
def description() -> dict[str, Any]:
    text = (tree.ROOT / "tests/architecture/openapi.yaml").read_text(encoding="utf-8")
    schema: dict[str, Any] = yaml.load(text, yaml.CSafeLoader)
    return schema


def example(address: str) -> dict[str, Any]:
    """What the description says may be sent; for a plan the four-canal molar, which has more in it."""
    if address == "compute/plan":
        return plan_request()
    if address == "compute/run-sheet":
        return {"canal": "P", "plan": plan_request()}
    body = description()["paths"][ROOT + address]["post"]["requestBody"]["content"]["application/json"]
    first = next(iter(body["examples"].values()))
    return deepcopy(first["value"])


@cache
def browser() -> APIClient:
    """One for all: the first request of a client puts its server together, which would be counted with it."""
    return signed_in()


def send(address: str, body: str | bytes) -> Any:
    return browser().post(ROOT + address, body, content_type="application/json")


def refusal(answer: Any) -> dict[str, Any]:
    """The problem, once it is one."""
    assert 400 <= answer.status_code < 500, answer.content[:300]
    assert answer["Content-Type"] == "application/problem+json"
    problem: dict[str, Any] = answer.json()
    assert problem["detail"]
    return problem


def pointed_at(problem: dict[str, Any]) -> list[str]:
    return [error["pointer"] for error in problem["errors"]]


# --- bodies as they come -------------------------------------------------------------------------------------------


def doubled(body: str) -> str:
    """The first key of the body twice."""
    key = json.dumps(next(iter(json.loads(body))))
    return "{" + f"{key}: null, {body[1:]}"


BODIES: dict[str, Callable[[str], str | bytes]] = {
    "nothing": lambda body: "",
    "blanks": lambda body: " \n ",
    "cut off": lambda body: body[: len(body) // 2],
    "null": lambda body: "null",
    "a number": lambda body: "7",
    "a text": lambda body: json.dumps(body),
    "a list": lambda body: f"[{body}]",
    "an empty object": lambda body: "{}",
    "not a number": lambda body: body.replace(": ", ": NaN, ", 1),
    "infinite": lambda body: '{"x": Infinity}',
    "minus infinite": lambda body: '{"x": -Infinity}',
    "a number beyond every float": lambda body: '{"x": 1e400}',
    "a whole number of thousands of digits": lambda body: '{"x": ' + "9" * 5_000 + "}",
    "nested beyond reading": lambda body: "[" * 100_000 + "]" * 100_000,
    "objects nested beyond reading": lambda body: '{"x": ' * 50_000 + "1" + "}" * 50_000,
    "a key twice": doubled,
    "many keys and one of them twice": lambda body: (
        "{" + '"x": 1, ' + ", ".join(f'"{n}": 1' for n in range(MANY)) + ', "x": 2}'
    ),
    "many unknown keys": lambda body: json.dumps({str(n): n for n in range(2 * MANY)}),
    "one long text": lambda body: json.dumps({"x": LONG}),
    "too many bytes": lambda body: "[" + "1," * MOST_BYTES + "1]",
    "not UTF-8": lambda body: body.encode("utf-16"),
    "half a character": lambda body: '{"x": "\\ud800"}',
    "a byte that is none": lambda body: b'{"x": "\xff"}',
    "a control character": lambda body: '{"x": "\x00"}',
}


@pytest.mark.parametrize("address", ADDRESSES)
@pytest.mark.parametrize("kind", BODIES)
def test_a_body_that_cannot_be_taken_is_refused_and_says_where(address: str, kind: str) -> None:
    problem = refusal(send(address, BODIES[kind](json.dumps(example(address)))))
    assert pointed_at(problem)
    assert all(pointer.startswith("#") for pointer in pointed_at(problem))


@pytest.mark.parametrize(("keys", "listed"), [(MOST_TOLD - 1, MOST_TOLD), (MOST_TOLD, 1), (2 * MANY, 1)])
def test_problems_are_told_one_by_one_until_nobody_would_read_them(keys: int, listed: int) -> None:
    problem = refusal(send("compute/tooth", json.dumps({str(n): n for n in range(keys)})))
    assert len(problem["errors"]) == listed
    # 'designation' is missing beside the unknown keys.
    assert (str(keys + 1) in problem["detail"]) == (listed == 1)


def test_a_key_that_is_there_twice_is_named() -> None:
    problem = refusal(send("compute/tooth", '{"notation": "iso_3950", "designation": "11", "designation": "21"}'))
    assert "'designation' is there twice" in problem["detail"]


# --- one place wrong -----------------------------------------------------------------------------------------------

HOSTILE: list[Any] = [
    None,
    True,
    -1,
    0,
    1e308,
    -1e308,
    5e-324,
    2**63,
    10**400,
    "",
    "x" * 5_000,
    "\x00",
    "\u202e\U0001f9b7",
    [],
    {},
    [[[[[]]]]],
    {"x": {"x": {"x": None}}},
]


def places(value: Any, path: Path = ()) -> Iterator[Path]:
    """Every place in a request, of alike members of a list the first and the last."""
    if path:
        yield path
    if isinstance(value, dict):
        for key, each in value.items():
            yield from places(each, (*path, key))
    elif isinstance(value, list):
        for number in sorted({0, len(value) - 1} if value else ()):
            yield from places(value[number], (*path, number))


def put(request: Any, path: Path, value: Any) -> None:
    for part in path[:-1]:
        request = request[part]
    request[path[-1]] = value


def exists(request: Any, pointer: str) -> bool:
    """Whether a pointer leads somewhere in what was sent, or to a key that is missing in something there."""
    *around, last = [
        part.replace("~1", "/").replace("~0", "~") for part in pointer.removeprefix("#").split("/")[1:]
    ] or [""]
    for part in around:
        try:
            request = request[int(part) if isinstance(request, list) else part]
        except (KeyError, IndexError, ValueError, TypeError):
            return False
    return not isinstance(request, list) or (last.isdigit() and int(last) < len(request)) or not last


@pytest.mark.parametrize("address", ADDRESSES)
def test_any_one_place_may_hold_anything(address: str) -> None:
    usual = example(address)
    every = list(places(usual))
    # A large request takes its turn: each place holds some of the values, each value is held by many places.
    apart = 1 if len(every) <= len(HOSTILE) else 4
    for number, path in enumerate(every):
        for value in HOSTILE[number % apart :: apart]:
            request = deepcopy(usual)
            put(request, path, value)
            answer = send(address, json.dumps(request))
            if answer.status_code == 200:
                continue
            problem = refusal(answer)
            assert pointed_at(problem), (path, value, problem)
            assert all(exists(request, pointer) for pointer in pointed_at(problem)), (path, value, problem)


# --- too much of everything ----------------------------------------------------------------------------------------


def calls_for(work: Callable[[], Any]) -> tuple[int, Any]:
    """How many functions were called, and what came out."""
    count = 0

    def counted(frame: Any, event: str, argument: Any) -> None:
        nonlocal count
        count += event in ("call", "c_call")

    sys.setprofile(counted)
    try:
        result = work()
    finally:
        sys.setprofile(None)
    return count, result


def lists(value: Any, path: Path = ()) -> Iterator[Path]:
    if isinstance(value, list) and value and path:
        yield path
    members = value.items() if isinstance(value, dict) else enumerate(value[:1]) if isinstance(value, list) else ()
    for key, each in members:
        yield from lists(each, (*path, key))


def full(address: str) -> dict[str, Any]:
    """The usual request with something in every list a plan may have."""
    request = example(address)
    plan = request if address == "compute/plan" else request.get("plan", {})
    if plan:
        canal = plan["canals"][0]
        canal["felt"] = [{"node": "glide-path/10-02", "depth_mm": 19.5}]
        canal["widths"] = [{"from_end_mm": 1.0, "narrow_mm": 0.3}]
        plan["choices"]["canals"] = [{"canal": "P", "final_size": 40}]
        plan["choices"]["final_rinse"] = ["saline"]
        plan["factors"] = ["health:low"]
        plan["overrides"] = [{"code": "apex-wide", "canal": "P", "reason": "Seen."}]
    return request


@pytest.mark.parametrize("address", ADDRESSES)
def test_much_of_anything_is_refused_with_less_work_than_a_plan_takes(address: str) -> None:
    usual = json.dumps(example("compute/plan"))
    # What is made once is not counted.
    send("compute/plan", usual)
    send(address, json.dumps(example(address)))
    # Nor that a canal was planned before.
    forget()
    usual_calls, answer = calls_for(lambda: send("compute/plan", usual))
    assert answer.status_code == 200, answer.json()
    for path in lists(full(address)):
        for many in (1_000, MANY):
            request = full(address)
            held: Any = request
            for part in path:
                held = held[part]
            put(request, path, held[:1] * many)
            body = json.dumps(request)
            calls, answer = calls_for(lambda body=body: send(address, body))  # type: ignore[misc]
            problem = refusal(answer)
            assert pointed_at(problem), (path, problem)
            assert calls < usual_calls, (path, many)


@pytest.mark.parametrize("iso", ["0", "99", "-11", "1e308", "NaN", "%00", "%2e%2e%2f", "x" * 5_000, "\U0001f9b7"])
def test_a_tooth_that_is_none_is_not_there(iso: str) -> None:
    answer = browser().get(f"{ROOT}teeth/{iso}")
    assert answer.status_code == 404
    assert refusal(answer)["type"].endswith("/not-found")
