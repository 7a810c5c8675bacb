"""The same number wherever a case tells it: plan, list, chair, record, paper. They answer to each other."""

from __future__ import annotations

import copy
from collections.abc import Iterator
from io import BytesIO
from typing import Any

import pytest
from pypdf import PdfReader

from cases.models import Person, ToothPlanVersion
from tests.api.test_cases_treatment import DONE, PHONE, REACHED, event, report
from tests.cast import API, client
from tests.planning.claims import Claim, claims, disagreements, mm

Json = dict[str, Any]


def of_every_door(student: Person, supervisor: Person, version: ToothPlanVersion) -> Json:
    """What each door answers of one case that was worked a little."""
    case = version.case_id
    ask = client(student).get
    running = client(supervisor).get(f"{API}/programmes/{version.programme_id}/running-work").json()["results"]
    pdf = PdfReader(BytesIO(ask(f"{API}/cases/{case}/record.pdf").content))
    return {
        "version": ask(f"{API}/plan-versions/{version.pk}", {"expand": "plan"}).json(),
        "listed": ask(f"{API}/cases/{case}/plan-versions").json()["results"],
        "case": ask(f"{API}/cases/{case}").json(),
        "chair": ask(f"{API}/cases/{case}/events").json(),
        "record": ask(f"{API}/cases/{case}/record").json()["record"],
        "running": running[0],
        "paper": " ".join(" ".join(page.extract_text().split()) for page in pdf.pages),
    }


def of_case(at: Json) -> Iterator[Claim]:
    plan = at["version"]["plan"]
    yield from claims(plan)
    for name, doors in (
        ("must be put right", {"plan": "stop", "list": "stops"}),
        ("cautions", {"plan": "caution", "list": "cautions"}),
    ):
        of_plan = [
            caution
            for caution in plan["cautions"]
            if caution["severity"] == doors["plan"] and caution["overridden"] is None
        ]
        yield ("number", name), "plan", len(of_plan)
        yield ("number", name), "list of versions", at["listed"][0][doors["list"]]
        in_record = [caution for caution in at["record"]["cautions"] if caution["severity"] == doors["plan"]]
        yield ("number", name), "record", len(in_record)
    for canal in plan["canals"]:
        yield from _of_canal(at, canal)


def _of_canal(at: Json, canal: Json) -> Iterator[Claim]:
    name = canal["canal"]
    record = next(canal_ for canal_ in at["record"]["canals"] if canal_["canal"] == name)
    chair = next(canal_ for canal_ in at["chair"]["canals"] if canal_["canal"] == name)
    charted = next(canal_ for canal_ in at["case"]["canals"] if canal_["name"] == name)
    length = ("length", name)
    yield length, "plan", canal["length"]["stop_mm"]
    yield length, "record", record["length"]["stop_mm"]
    yield length, "case", charted["length"]["stop_mm"]
    yield length, "paper", canal["length"]["stop_mm"] if _on_paper(at["paper"], name, record) else "not there"
    size = f"{canal['final_size']:02d}/.{canal['final_taper']:02d}"
    yield ("planned size", name), "plan", size
    yield ("planned size", name), "record", record["planned_size"]
    nodes = canal["run_sheet"]["nodes"]
    due = nodes[chair["node"]]
    yield ("stop that is due", name), "order of work", due["stop_um"]
    yield ("stop that is due", name), "chair", chair["stop_um"]
    planned = [nodes[node] for node in canal["expected_path"] if node in nodes and nodes[node]["kind"] == "do"]
    kept = [step for step in record["steps"] if step["comparison"] != "added"]
    yield ("steps", name), "order of work", len(planned)
    yield ("steps", name), "record", len(kept)
    for step in kept:
        yield ("stop", f"{name} {step['node']} {step['pass_number']}"), "record", step["stop_mm"]
        yield (
            ("stop", f"{name} {step['node']} {step['pass_number']}"),
            "order of work",
            mm(nodes[step["node"]]["stop_um"]),
        )
    state = next(canal_["state"] for canal_ in at["running"]["canals"] if canal_["canal"] == name)
    yield ("state", name), "chair", chair["state"]
    yield ("state", name), "list of chairs", state
    yield ("state", name), "record", record["state"]


def _on_paper(paper: str, name: str, record: Json) -> bool:
    return f"{name} {record['reference_point']} {record['length']['stop_mm']:.1f}" in paper


@pytest.fixture
def at(priya: Person, vale: Person, approved: ToothPlanVersion) -> Json:
    """DB was explored to its stop and rinsed: it is shown which instrument comes next, and to where."""
    explored = event(approved, 1, REACHED | {"depth_um": 18_000, "stop_um": 18_000}, node="explore/10-02")
    report(priya, approved.case, PHONE, explored, event(approved, 2, DONE, node="explore/10-02/irrigate"))
    return of_every_door(priya, vale, approved)


def _record_length(at: Json) -> None:
    at["record"]["canals"][0]["length"]["stop_mm"] += 0.5


def _record_size(at: Json) -> None:
    at["record"]["canals"][1]["planned_size"] = "50/.04"


def _chair(at: Json) -> None:
    at["chair"]["canals"][3]["stop_um"] += 500


def _paper(at: Json) -> None:
    at["paper"] = at["paper"].replace("18.0", "18.5")


def _step(at: Json) -> None:
    at["record"]["canals"][0]["steps"].pop()


def _cautions(at: Json) -> None:
    at["listed"][0]["cautions"] += 1


def _state(at: Json) -> None:
    at["running"]["canals"][2]["state"] = "paused"


def test_every_door_tells_the_same_and_one_that_tells_otherwise_is_found(at: Json) -> None:
    every_claim = list(of_case(at))
    assert disagreements(iter(every_claim)) == {}
    told_at_all = {quantity for (quantity, _), _, _ in every_claim}
    assert told_at_all >= {"length", "planned size", "stop that is due", "steps", "state"}
    for breaks in (_record_length, _record_size, _chair, _paper, _step, _cautions, _state):
        broken = copy.deepcopy(at)
        breaks(broken)
        assert disagreements(of_case(broken)) != {}, breaks.__name__
