"""The sheet for the tray, read back by another program (pypdf): ten ordinary cases, on the bench and in the clinic."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from itertools import combinations

import pytest

from cases.domain.plans.lifecycle import Decision
from cases.domain.plans.work_sheet import WorkSheet
from cases.exports.work_sheet_pdf import work_sheet_pdf
from cases.models import Person, ToothPlanVersion
from planning.contract.plan_value import Plan, Severity
from planning.run_sheet.graph import Target
from planning.techniques.technique import Setting
from planning.whole_tooth.plan import plan
from tests.cases import paper
from tests.cast import API, client, decide
from tests.planning.ten_cases import CASES, on_a_patient, training_block

A4_WIDTH_MM, A4_HEIGHT_MM, LETTER_HEIGHT_MM = 210, 297, 279.4  # ISO 216; ANSI/ASME Y14.1
UNPRINTED_MM = 6
"""What desktop printers leave blank along an edge: common practice."""
SHEET = WorkSheet(
    case_id="01900000-0000-7000-8000-000000000000",
    patient_alias="Reed 20",
    programme="Bench",
    invented=True,
    student="Ines Calder",
    supervisor="Dr Reyle",
    number=2,
    hash="5f" * 32,
    made_at=datetime(2026, 3, 5, 12, tzinfo=UTC),
    approved=True,
    approval="Approved by Dr Reyle, 2026-03-05 12:30.",
    not_released=(),
    plan=plan(training_block()),
)


@pytest.mark.parametrize("on_patient", [False, True], ids=["bench", "clinic"])
@pytest.mark.parametrize("name", CASES)
def test_one_page_says_every_stop_of_the_plan_and_neither_paper_cuts_it(name: str, on_patient: bool) -> None:
    case = CASES[name]()
    if on_patient and case.setting is Setting.BLOCK:
        return
    planned = plan(on_a_patient(case) if on_patient else case)
    drawn = work_sheet_pdf(replace(SHEET, plan=planned))
    (page,) = paper.pages(drawn)
    assert "page 1 of 1" in page
    for head, says in _rows(planned):
        assert f"{head} {says}" in page
    lacking = [each.says for each in planned.cautions if each.severity is not Severity.NOTE and not each.overridden]
    assert [says for says in lacking if says not in page] == []
    boxes = paper.boxes(drawn)
    assert [(a.text, b.text) for a, b in combinations(boxes, 2) if a.overlaps(b)] == []
    for box in boxes:
        assert UNPRINTED_MM <= box.left_mm < box.right_mm <= A4_WIDTH_MM - UNPRINTED_MM
        # A sheet of A4 laid on letter with its top at the top, or in the middle.
        from_top_mm = A4_HEIGHT_MM - box.foot_mm
        assert from_top_mm <= LETTER_HEIGHT_MM - UNPRINTED_MM
        assert A4_HEIGHT_MM - box.top_mm >= (A4_HEIGHT_MM - LETTER_HEIGHT_MM) / 2


def _rows(of: Plan) -> list[tuple[str, str]]:
    """Each row of the stop table as it has to be read, the needle's last."""
    rows = []
    for row in of.stop_table:
        stops = {stop.canal: stop for stop in row.stops}
        listed = [stops[canal.canal] for canal in of.canals if canal.canal in stops]
        marked = (f"{stop.stop_mm:.1f}" + " *" * (stop.target is Target.TO_RESISTANCE) for stop in listed)
        rows.append((f"{row.instrument.name} {row.phase}", " ".join(marked)))
    needles = " ".join(f"{canal.needle.ceiling_mm:.1f}" for canal in of.canals if canal.needle)
    return [*rows, ("needle never past", needles)]


def test_what_is_not_approved_says_so_plainly() -> None:
    sheet = replace(SHEET, approved=False, approval="Plan 2 waits for the supervisor.")
    assert "NOT APPROVED. Plan 2 waits for the supervisor." in paper.pages(work_sheet_pdf(sheet))[0]
    assert "NOT APPROVED" not in paper.pages(work_sheet_pdf(SHEET))[0]


@pytest.mark.one_database
def test_the_sheet_of_a_version_follows_its_approval(
    submitted: ToothPlanVersion, priya: Person, vale: Person, stranger: Person
) -> None:
    address = f"{API}/plan-versions/{submitted.pk}/work-sheet.pdf"
    before = client(priya).get(address)
    assert (before.status_code, before["Content-Type"]) == (200, "application/pdf")
    assert "NOT APPROVED. Plan 1 waits" in paper.whole_text(before.content)
    decide(vale, submitted, Decision.APPROVED)
    after = client(priya).get(address)
    assert "Approved by Vale, " in paper.whole_text(after.content)
    assert after["ETag"] != before["ETag"]
    assert client(priya).get(address, headers={"If-None-Match": after["ETag"]}).status_code == 304
    assert client(stranger).get(address).status_code == 404
