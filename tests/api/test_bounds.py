"""What the stored API accepts of a canal a plan accepts too; what it refuses it refuses with the row's own sentence."""

from __future__ import annotations

import re
from typing import Any

import pytest

from cases.models import Case, Person
from cases.services.planning import plans
from cases.services.planning.plan_input import Asked
from frontend.management.commands.phone_bounds import BOUNDS, LABELS, labels, text
from planning.contract.canal_facts import CanalFacts, WallInput
from planning.contract.plan_input import PlanInput
from planning.foundation.bounds import of_fields, within
from planning.foundation.encoding import json_schema
from planning.foundation.errors import OutOfBounds, PlanningError
from tests.cast import API, canal_of, client

CHARTED = of_fields(CanalFacts)
WALL = of_fields(WallInput)


def body(field: str, value: Any) -> dict[str, Any]:
    return {"wall": {"thickness_mm": 1.0, "from_end_mm": 3.0, field: value}} if field in WALL else {field: value}


ROWS = sorted({**CHARTED, **WALL}.items())


@pytest.mark.parametrize(("field", "bound"), ROWS, ids=[field for field, _ in ROWS])
def test_at_the_bounds_a_fact_is_charted_and_planned_with(
    field: str, bound: Any, molar: Case, priya: Person, asked: Asked
) -> None:
    for value in (bound.least, bound.most):
        at = f"{API}/canals/{canal_of(molar, 'P').pk}"
        response = client(priya).patch(at, body(field, value), format="json")
        assert response.status_code == 200, response.json()
        molar.refresh_from_db()
        try:
            plans.preview(actor=priya, case=molar, asked=asked)
        except OutOfBounds:
            raise
        except PlanningError as other:  # a rule between two facts, or an open apex
            assert field in {"apex_mm", "orifice_mm"}, other  # noqa: PT017


@pytest.mark.parametrize(("field", "bound"), ROWS, ids=[field for field, _ in ROWS])
def test_just_beyond_them_it_is_refused_where_it_is_typed(field: str, bound: Any, molar: Case, priya: Person) -> None:
    step = 1 if bound.whole else 0.01
    at = f"{API}/canals/{canal_of(molar, 'P').pk}"
    for value in (bound.least - step, bound.most + step):
        response = client(priya).patch(at, body(field, value), format="json")
        assert response.status_code == 422
        (error,) = response.json()["errors"]
        assert error["detail"] == bound.sentence
        assert error["pointer"].endswith(f"/{field}")


@pytest.mark.parametrize("junk", ['"20"', "true", "1e400", "-1e400", "NaN", "[]"])
def test_what_is_no_number_is_refused(junk: str, molar: Case, priya: Person) -> None:
    at = f"{API}/canals/{canal_of(molar, 'P').pk}"
    sent = f'{{"orifice_mm": {junk}}}'
    response = client(priya).patch(at, sent, content_type="application/json")
    assert response.status_code in {400, 422}


@pytest.mark.parametrize("from_end_mm", [-0.1, 36.1, 38])
def test_a_reading_or_a_junction_beyond_the_tooth_is_refused_at_once(
    from_end_mm: float, molar: Case, priya: Person
) -> None:
    canal = canal_of(molar, "MB2")
    junction = {"from_terminus_mm": from_end_mm, "method": "cone_mark"}
    response = client(priya).post(f"{API}/canals/{canal.pk}/junctions", {"junction": junction}, format="json")
    assert (response.status_code, response.json()["detail"]) == (422, within("depth").sentence)
    seen = {"method": "direct_sight", "seen_mm": 38, "reference_point": canal.reference_point}
    response = client(priya).post(f"{API}/canals/{canal.pk}/readings", {"reading": seen}, format="json")
    assert (response.status_code, response.json()["detail"]) == (422, within("length").sentence)


def test_the_app_has_the_rows_as_they_are_now() -> None:
    """`python3 manage.py phone_bounds` writes them."""
    assert BOUNDS.read_text(encoding="utf-8") == text()
    assert LABELS.read_text(encoding="utf-8") == labels()


def test_the_app_says_no_label_again_that_its_field_says() -> None:
    """Words of their own count, of two at least: 'Canal' stands in many a place for its own reasons."""
    parts = json_schema(PlanInput)["$defs"].values()
    titles = {field.get("title", "") for part in parts for field in part.get("properties", {}).values()}
    called = {title for title in titles if " " in title}
    assert len(called) > 50
    texts = {
        said: path.name for path in LABELS.parent.glob("*.ts") for said in re.findall(r"'([^'\n]+)'", path.read_text())
    }
    assert len(texts) > 1000
    assert {said: name for said, name in texts.items() if said.lower() in called} == {}
