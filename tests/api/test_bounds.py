"""What the stored API accepts of a canal a plan accepts too; what it refuses it refuses with the row's own sentence."""

from __future__ import annotations

from typing import Any

import pytest

from cases.models import Case, Person
from cases.services.planning import plans
from cases.services.planning.plan_input import Asked
from frontend.management.commands.phone_bounds import BOUNDS, text
from planning.contract.canal_facts import CanalFacts, WallInput
from planning.contract.plan_input import CanalInput, Choices, PlanInput, RootInput
from planning.foundation.bounds import noted, of_fields, within
from planning.foundation.errors import OutOfBounds, PlanningError
from planning.foundation.facts import Fact
from planning.lengths.readings import ConfirmingImage, Ratio
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


ASKED: dict[type, tuple[str, ...]] = {
    PlanInput: ("tooth", "setting", "kit", "technique", "anatomy"),
    RootInput: ("pattern",),
    CanalInput: ("finding", "reference_point"),
    Choices: ("needle", "irrigant", "final_rinse", "series_taper"),
    ConfirmingImage: ("set_mm",),
    Ratio: ("instrument_on_image_mm", "tooth_on_image_mm"),
}


@pytest.mark.parametrize("type_", ASKED)
def test_a_form_calls_a_field_by_its_label(type_: type) -> None:
    """Of the others it asks in words of its own, which say what to measure, and how."""
    words = "".join((BOUNDS.parents[1] / "words" / name).read_text() for name in ("case.ts", "planning.ts"))
    called = [noted(type_, Fact)[name].label for name in ASKED[type_]]
    assert [label for label in called if f"'{label[0].upper()}{label[1:]}'" not in words] == []
