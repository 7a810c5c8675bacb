"""How resources of FHIR are read and searched: conditions, identifiers, patients, pages, points in time."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime, timedelta

from cases.api.fhir.types import TYPES
from cases.models import Case, Person, Programme, ToothPlanVersion
from tests.api.fhir_reader import BASE, HOST, ask, ids, shown
from tests.cast import canal_of, client, open_case
from tests.draws import WHOLE


def test_what_has_not_changed_is_not_sent_again(molar: Case, priya: Person) -> None:
    address = f"{BASE}/Patient/{molar.patient_id}"
    first = client(priya).get(address)
    assert "GMT" in first["Last-Modified"]
    again = client(priya).get(address, headers={"If-None-Match": first["ETag"]})
    assert (again.status_code, again.content) == (304, b"")
    assert client(priya).head(address)["ETag"] == first["ETag"]


def test_each_identifier_leads_back_to_what_has_it(clinic: ToothPlanVersion, priya: Person) -> None:
    every = [entry["resource"] for entry in ask(priya, f"Patient/{clinic.case.patient_id}/$everything")["entry"]]
    # In the gate the last of each kind.
    those = every if WHOLE else {each["resourceType"]: each for each in every}.values()
    for resource in those:
        for identifier in resource.get("identifier", ()):
            token = f"{identifier['system']}|{identifier['value']}"
            assert shown(priya, resource["resourceType"], identifier=token) == [resource]
            assert resource["id"] in ids(shown(priya, resource["resourceType"], identifier=identifier["value"]))
            assert shown(priya, resource["resourceType"], identifier=f"urn:x|{identifier['value']}") == []


def test_ids_and_patients_narrow_a_search(molar: Case, priya: Person, programme: Programme) -> None:
    other = open_case(programme, priya, "36", patient_alias="Bench 2")
    both = shown(priya, "BodyStructure", _id=f"{molar.pk},{canal_of(molar, 'P').pk},{other.patient_id}")
    assert ids(both) == {str(molar.pk), str(canal_of(molar, "P").pk)}
    whole = len(shown(priya, "BodyStructure"))
    for said in (other.patient_id, f"Patient/{other.patient_id}", f"{HOST}{BASE}/Patient/{other.patient_id}"):
        assert 1 < len(shown(priya, "BodyStructure", patient=said)) < whole
    assert shown(priya, "BodyStructure", patient=f"CarePlan/{other.patient_id}") == []
    ask(priya, "Task", 400, focus="no-type")


def test_pages_show_everything_once(molar: Case, priya: Person, programme: Programme) -> None:
    for number in range(23):  # more cases than one page looks at
        open_case(programme, priya, "36", patient_alias=f"Bench {number + 2}")
    whole = shown(priya, "BodyStructure", _count=200)
    for count in (1, 7):
        assert shown(priya, "BodyStructure", _count=count) == whole
    assert len(ids(whole)) == len(whole) > 70
    assert len(ask(priya, "BodyStructure", _count=7)["entry"]) == 7
    for wrong in ("0", "-1", "x"):
        ask(priya, "BodyStructure", 400, _count=wrong)
    ask(priya, "BodyStructure", 400, _after="x")


def test_what_changed_since_is_found_as_exactly_as_it_is_told(clinic: ToothPlanVersion, priya: Person) -> None:
    for type_ in TYPES:
        every = shown(priya, type_)
        times = [each["meta"]["lastUpdated"] for each in every]
        for at in sorted(set(times))[:2]:
            for prefix, holds in HOLDS.items():
                asked_for = shown(priya, type_, _lastUpdated=f"{prefix}{at}")
                assert [each["id"] for each in asked_for] == [
                    each["id"] for each, time in zip(every, times, strict=True) if holds(time, at)
                ], (type_, prefix)


def test_whatever_is_asked_for_is_answered_or_refused(clinic: ToothPlanVersion, priya: Person) -> None:
    case, many = clinic.case_id, "9" * 5000  # digits, more than Python reads
    odd = ("", "|", "a|b|c", ",", "/", "//", "a/b", "%", "ÿ", "x.-1", f"{case}.-1", f"{case}.{many}", many)
    browser = client(priya)
    met: set[str] = set()
    for type_ in TYPES.values():
        for name in (*type_.parameters, "_count", "_after", "_format"):
            # What several types have is read by the same rows of one table: all of it once, and one at each type.
            values = odd[-1:] if name in met else odd
            met.add(name)
            statuses = {value: browser.get(f"{BASE}/{type_.name}", {name: value}).status_code for value in values}
            assert set(statuses.values()) <= {200, 400, 406}, (type_.name, name, statuses)
            wrong = browser.get(f"{BASE}/{type_.name}", {name: "a\x00b"})
            assert wrong.status_code in (400, 406), (type_.name, name)


HOLDS: dict[str, Callable[[str, str], bool]] = {
    "": lambda time, at: time == at,
    "eq": lambda time, at: time == at,
    "ne": lambda time, at: time != at,
    "gt": lambda time, at: time > at,
    "sa": lambda time, at: time > at,
    "ge": lambda time, at: time >= at,
    "lt": lambda time, at: time < at,
    "eb": lambda time, at: time < at,
    "le": lambda time, at: time <= at,
}


def test_a_day_is_a_whole_day_and_several_hold_at_once(molar: Case, priya: Person) -> None:
    (patient,) = shown(priya, "Patient")
    at = datetime.fromisoformat(patient["meta"]["lastUpdated"])
    day, before, after = at.date(), (at - timedelta(days=1)).date(), (at + timedelta(days=1)).date()
    for holds in ("{day}", "{day:%Y-%m}", "{day:%Y}", "le{day}", "ge{day}", "gt{before}", "lt{after}", "ne{after}"):
        wanted = holds.format(day=day, before=before, after=after)
        assert shown(priya, "Patient", _lastUpdated=wanted) == [patient], wanted
    for holds in ("{before}", "gt{day}", "lt{day}", "ne{day}", "2019", "1999-12"):
        wanted = holds.format(day=day, before=before)
        assert shown(priya, "Patient", _lastUpdated=wanted) == [], wanted
    assert shown(priya, "Patient", _lastUpdated=[f"ge{day}", f"lt{after}"]) == [patient]
    assert shown(priya, "Patient", _lastUpdated=[f"ge{day}", f"lt{day}"]) == []
    for wrong in ("yesterday", "ap2026", "2026-13", "2026-02-30", f"{day}T10:00", "0000", "9999-12-31T23:59:59-05:00"):
        ask(priya, "Patient", 400, _lastUpdated=wrong)


def test_only_json_is_sent(molar: Case, priya: Person) -> None:
    ask(priya, "Patient", _format="application/fhir+json")
    assert ask(priya, "Patient", 406, _format="xml")["issue"][0]["code"] == "not-supported"
    assert client(priya).get(f"{BASE}/Patient", headers={"Accept": "application/fhir+xml"}).status_code == 406
