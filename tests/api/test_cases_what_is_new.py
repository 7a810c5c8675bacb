"""A device that says what it has is answered with what is new, in as few bytes and queries however much was done."""

from __future__ import annotations

import gzip

from django.db import connection
from django.test.utils import CaptureQueriesContext

from cases.domain.uuid7 import uuid7
from cases.models import Person, ToothPlanVersion
from tests.api.test_cases_treatment import LAPTOP, PHONE, REACHED, at, event, report
from tests.cast import client

MOST_QUERIES, MOST_BYTES = 20, 8_000
# Compressed, as a browser takes it.
MOST_BYTES_SENT = 5_000


def test_the_answer_holds_what_came_after_what_the_device_has(
    priya: Person, vale: Person, approved: ToothPlanVersion
) -> None:
    first, second = (event(approved, seq, REACHED, node="explore/10-02") for seq in (1, 2))
    had = report(priya, approved.case, PHONE, first).json()
    assert had["after_id"] is None
    word = event(approved, 1, {"kind": "note", "text": "Seen."}, canal="")
    report(vale, approved.case, LAPTOP, word)
    last = had["events"][-1]["id"]
    body = {"device_id": PHONE, "after_id": last, "events": [second]}
    fresh = client(priya).post(at(approved.case), body, format="json").json()
    assert (fresh["after_id"], [each["id"] for each in fresh["events"]]) == (last, [word["id"], second["id"]])
    assert fresh["course"]["out_of_course"] == {second["id"]: "other_step"}
    whole = client(priya).get(at(approved.case)).json()
    assert whole["events"] == had["events"] + fresh["events"]
    assert (whole["position"], whole["canals"]) == (fresh["position"], fresh["canals"])
    # Sent again there is nothing new.
    again = client(priya).post(at(approved.case), body | {"after_id": second["id"]}, format="json").json()
    assert (again["after_id"], again["events"], again["position"]) == (second["id"], [], fresh["position"])
    # An event that is not here, or of another case: the device was told of it by another server.
    for stranger in (str(uuid7()), str(approved.pk)):
        again = client(priya).post(at(approved.case), body | {"after_id": stranger}, format="json").json()
        assert (again["after_id"], again["events"]) == (None, whole["events"])


def test_an_event_that_changes_what_earlier_ones_say_is_answered_with_all_of_them(
    priya: Person, approved: ToothPlanVersion
) -> None:
    """A device that joined it with what it has would go on calling the entry out of course."""
    first, second = (event(approved, seq, REACHED, node="explore/10-02") for seq in (1, 2))
    had = report(priya, approved.case, PHONE, first, second).json()
    assert had["course"]["out_of_course"] == {second["id"]: "other_step"}
    undo = event(approved, 3, {"kind": "undo", "undoes": second["id"]})
    body = {"device_id": PHONE, "after_id": had["events"][-1]["id"], "events": [undo]}
    fresh = client(priya).post(at(approved.case), body, format="json").json()
    whole = client(priya).get(at(approved.case)).json()
    assert (fresh["after_id"], fresh["events"]) == (None, whole["events"])
    assert fresh["course"] == whole["course"]
    assert second["id"] not in fresh["course"]["out_of_course"]


def test_an_answer_is_as_short_however_much_was_done(priya: Person, approved: ToothPlanVersion) -> None:
    """Bytes and queries of a batch of ten, after a hundred events and after a thousand."""
    note, seq, costs = {"kind": "note", "text": "Seen under the microscope."}, 1, []
    for count in (100, 1_000):
        last = None
        while seq < count:
            batch = [event(approved, n, note, canal="P") for n in range(seq, min(seq + 100, count))]
            last = report(priya, approved.case, PHONE, *batch).json()["events"][-1]["id"]
            seq += len(batch)
        ten = [event(approved, n, REACHED, node="explore/10-02") for n in range(seq, seq + 10)]
        seq += 10
        browser = client(priya)
        with CaptureQueriesContext(connection) as asked:
            body = {"device_id": PHONE, "after_id": last, "events": ten}
            answer = browser.post(at(approved.case), body, format="json", headers={"Accept-Encoding": "gzip"})
        assert len(answer.content) < MOST_BYTES_SENT, len(answer.content)
        costs.append((len(asked), len(gzip.decompress(answer.content))))
    (few_queries, few_bytes), (queries, size) = costs
    assert queries <= few_queries <= MOST_QUERIES
    # One more digit in each position; the first batch left one step that fits.
    assert size <= few_bytes + 200
    assert size < MOST_BYTES, size
