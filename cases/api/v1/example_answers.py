"""Examples of answers. What is typed in is invented; lengths, names and status in them are computed."""

from __future__ import annotations

from typing import Any

from cases.domain.plans.lifecycle import PlanState
from cases.domain.plans.status import PlanStatus, VersionFacts, status
from cases.queries.charts import names_of
from planning.api.examples import Computed
from planning.contract.canal_facts import CanalFacts, Finding
from planning.contract.plan_input import Junction
from planning.contract.tooth_facts import ToothFacts
from planning.foundation.encoding import encode
from planning.foundation.tables import Figures
from planning.lengths.readings import ConfirmingImage, PreOperativeImage, Reading
from planning.lengths.working_length import LengthContext, settle

AT = "2026-03-05T09:30:00Z"
POINT = "buccal cusp"
READINGS: tuple[Reading, ...] = (
    PreOperativeImage(tooth_mm=24.0, reference_point=POINT),
    ConfirmingImage(set_mm=23.0, tip_short_mm=0.5, reference_point=POINT),
)


def example_id(last: int) -> str:
    return f"01930a5e-7c00-7000-8000-{last:012x}"


_MIRA = {"id": example_id(1), "name": "Mira Example"}
_DR_SAND = {"id": example_id(11), "name": "Dr Sand Example"}


_FACTS = CanalFacts(
    finding=Finding.FOUND, orifice_mm=8.5, curvature_deg=12.0, curve_radius_mm=9.0, curve_from_end_mm=5.0
)


def _canal() -> dict[str, Any]:
    about = LengthContext(canal="single", reference_point=POINT, setting="extracted")
    taken = [
        {
            "id": example_id(20 + number),
            "number": number,
            "at": AT,
            "actor": _MIRA,
            "reading": encode(reading),
            "struck": None,
        }
        for number, reading in enumerate(READINGS, start=1)
    ]
    return {
        "id": example_id(6),
        "name": "single",
        "root": "single",
        "reference_point": POINT,
        **encode(_FACTS),
        "length": encode(settle(READINGS, about, Figures())),
        "length_problem": "",
        "junction": None,
        "readings": taken,
        "junctions": [],
    }


def _status() -> PlanStatus:
    version = VersionFacts(number=1, state=PlanState.WAITING, case_revision=5, was_approved=False)
    return status([version], 5)


def _case() -> dict[str, Any]:
    return {
        "id": example_id(5),
        "programme_id": example_id(2),
        "external_id": None,
        "patient_alias": "Bench tooth 7",
        "tooth": encode(names_of("34")),
        "setting": "extracted",
        "student": _MIRA,
        "supervisor": _DR_SAND,
        "created_at": AT,
        "revision": 5,
        "status": encode(_status()),
        "version": {"id": example_id(30), "number": 1, "state": "waiting"},
        "notation": "palmer",
        "designation": "LL4",
        **encode(ToothFacts(factors=("opening:moderate",))),
        "roots": [{"name": "single", "pattern": "unknown", "main_canal": None}],
        "canals": [_canal()],
        "overrides": [],
    }


def _with_junction() -> dict[str, Any]:
    junction = encode(Junction(from_terminus_mm=4.5, method="cone_mark", at_length_mm=22.5))
    taken = {"id": example_id(8), "number": 1, "at": AT, "actor": _MIRA, "junction": junction, "struck": None}
    return {**_canal(), "name": "L", "junction": junction, "junctions": [taken]}


def _worklist() -> dict[str, Any]:
    case = _case()
    shared = ("patient_alias", "tooth", "setting", "student", "supervisor")
    canal = {
        "canal": "single",
        "length_state": case["canals"][0]["length"]["state"],
        "stop_mm": case["canals"][0]["length"]["stop_mm"],
        "end_mm": case["canals"][0]["length"]["stop_mm"],
        "final_size": 30,
        "final_taper": 5,
    }
    waits = {
        "version_id": example_id(30),
        "number": 1,
        "hash": "0f" * 32,
        "case_id": case["id"],
        "asks": "first",
        "stops": 0,
        "cautions": 1,
        "difficulty": "moderate",
        "canals": [canal],
        "submitted_at": AT,
        "waiting_s": 540,
        "stale": False,
    }
    rows = [{**waits, **{key: case[key] for key in shared}}]
    return {"next": None, "previous": None, "results": rows}


def _review() -> dict[str, Any]:
    return {
        "id": example_id(9),
        "decision": "returned",
        "asked": 1,
        "supervisor": _DR_SAND,
        "at": AT,
        "note": "",
        "remarks": [{"canal": "L", "text": "Gauge it again before you settle on the size.", "returned": False}],
        "acknowledged": [],
        "own_lengths": [],
    }


CASE = Computed("A premolar, measured, its plan waiting", _case)
CANAL = Computed("A canal whose length is settled", _canal)
CANAL_THAT_JOINS = Computed("A canal that joins another", _with_junction)
WORKLIST = Computed("One plan that waits", _worklist)
REVIEW = Computed("Returned with a remark", _review)
