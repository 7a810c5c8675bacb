"""The long texts of a plan: where they lie, how they are sent, and that no list reads them."""

from __future__ import annotations

import gzip
import json
from datetime import timedelta

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext
from django.utils import timezone

from cases.models import Case, Person, PlanTexts, Programme, ToothPlanVersion
from planning.foundation.encoding import digest
from tests.cast import API, client, problem

MOST_BYTES = 60_000
"""Of a case with one plan, as the programme's goal has it."""


def texts_at(version: ToothPlanVersion, hash_: str = "") -> str:
    return f"{API}/plan-versions/{version.pk}/texts/{hash_ or version.hash}"


def test_both_texts_come_out_to_the_character(proposed: ToothPlanVersion) -> None:
    input_text, plan = ToothPlanVersion.objects.get(pk=proposed.pk).texts.both()
    assert digest(f"{input_text}\n{plan}") == proposed.hash
    odd = PlanTexts.of(proposed, plan_input='{"remark":"Zähne, 歯, \\u0000,\\"plan\\":"}', plan='{"a":","}')
    assert odd.both() == ('{"remark":"Zähne, 歯, \\u0000,\\"plan\\":"}', '{"a":","}')


def test_a_case_with_one_plan_is_small(priya: Person, proposed: ToothPlanVersion) -> None:
    assert len(proposed.texts.packed) < MOST_BYTES, len(proposed.texts.packed)
    assert len(proposed.texts.packed) * 4 < len(proposed.input_text) + len(proposed.output_text)


def test_a_phone_that_has_nothing_fetches_little_of_a_case_with_one_plan(
    priya: Person, approved: ToothPlanVersion
) -> None:
    """All that its screens ask for, compressed as a browser takes it."""
    case, version = f"{API}/cases/{approved.case_id}", f"{API}/plan-versions/{approved.pk}"
    addresses = (case, f"{case}/plan-versions", f"{case}/events", version, texts_at(approved))
    answers = {at: client(priya).get(at, headers={"Accept-Encoding": "gzip"}) for at in addresses}
    assert {answer["Content-Encoding"] for answer in answers.values()} == {"gzip"}
    sizes = {at: len(answer.content) for at, answer in answers.items()}
    assert sum(sizes.values()) < MOST_BYTES, sizes


def test_it_is_sent_as_it_lies_and_kept_for_a_year(priya: Person, proposed: ToothPlanVersion) -> None:
    sent = client(priya).get(texts_at(proposed), headers={"Accept-Encoding": "br, gzip"})
    assert sent.content == bytes(proposed.texts.packed)
    assert (sent["Content-Encoding"], sent["ETag"]) == ("gzip", f'"{proposed.hash}"')
    assert sent["Cache-Control"] == "private, max-age=31536000, immutable"
    assert {"Accept-Encoding", "Cookie"} <= set(sent["Vary"].split(", "))
    plain = client(priya).get(texts_at(proposed))
    assert (plain.content, plain.has_header("Content-Encoding")) == (gzip.decompress(sent.content), False)
    version = client(priya).get(f"{API}/plan-versions/{proposed.pk}", {"fields": "given,plan,texts"}).json()
    assert plain.json() == {"given": version["given"], "plan": version["plan"]}
    assert version["texts"] == texts_at(proposed)


def test_what_is_there_is_not_sent_again(priya: Person, proposed: ToothPlanVersion) -> None:
    answer = client(priya).get(texts_at(proposed), headers={"If-None-Match": f'"{proposed.hash}"'})
    assert (answer.status_code, answer.content) == (304, b"")


def test_another_hash_or_another_programme_has_nothing_there(
    priya: Person, proposed: ToothPlanVersion, stranger: Person
) -> None:
    problem(client(priya).get(texts_at(proposed, "0" * 64)), 404, "not-found")
    problem(client(stranger).get(texts_at(proposed)), 404, "not-found")


@pytest.mark.parametrize(
    "address",
    [
        "programmes/{programme}/worklist",
        "programmes/{programme}/running-work",
        "programmes/{programme}/cases",
        "cases/{case}",
        "cases/{case}/plan-versions",
        "plan-versions/{version}",
    ],
)
def test_no_list_reads_past_the_texts(
    vale: Person, submitted: ToothPlanVersion, programme: Programme, address: str
) -> None:
    at = address.format(programme=programme.pk, case=submitted.case_id, version=submitted.pk)
    with CaptureQueriesContext(connection) as asked:
        answer = client(vale).get(f"{API}/{at}")
    assert answer.status_code == 200, answer.content
    assert json.loads(answer.content)
    assert [query["sql"] for query in asked if "plantexts" in query["sql"]] == []
    assert any("toothplanversion" in query["sql"] or "runningwork" in query["sql"] for query in asked)


def test_a_poll_with_nothing_new_is_answered_without_the_list(vale: Person, submitted: ToothPlanVersion) -> None:
    at = f"{API}/programmes/{submitted.programme_id}/worklist"
    browser = client(vale)
    first = browser.get(at)
    with CaptureQueriesContext(connection) as asked:
        again = browser.get(at, headers={"If-None-Match": first["ETag"]})
    assert (again.status_code, again.content) == (304, b"")
    # Who asks (two), what they may, and what waits.
    assert len(asked) == 4, [query["sql"] for query in asked]


def test_the_worklist_has_another_tag_once_anything_of_it_is_another(
    vale: Person, amari: Person, submitted: ToothPlanVersion, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Every column of what waits that can change, and time."""
    at = f"{API}/programmes/{submitted.programme_id}/worklist"
    browser, case = client(vale), submitted.case
    seen = [browser.get(at)["ETag"]]

    def has_another_tag() -> None:
        seen.append(browser.get(at)["ETag"])
        assert len(set(seen)) == len(seen), len(seen)

    type(case.patient).objects.filter(pk=case.patient_id).update(alias="Another alias")
    has_another_tag()
    Case.objects.filter(pk=case.pk).update(supervisor=amari)
    has_another_tag()
    Person.objects.filter(pk=case.student_id).update(display_name="Another name")
    has_another_tag()
    Case.objects.filter(pk=case.pk).update(revision=case.revision + 1)
    has_another_tag()
    later = timezone.now() + timedelta(minutes=2)
    monkeypatch.setattr("cases.api.v1.worklist.timezone.now", lambda: later)
    has_another_tag()
    submitted.state = "returned"
    submitted.decided_at = later
    submitted.save(update_fields=["state", "decided_at"])
    has_another_tag()
