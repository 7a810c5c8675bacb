"""A search: what is asked for, the cases it can be in, and a page of what fits."""

from __future__ import annotations

import unicodedata
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import islice
from typing import Any
from uuid import UUID

from django.http import QueryDict
from rest_framework.exceptions import ErrorDetail, ValidationError

from cases.api.fhir.case import CaseRead, Reader
from cases.api.fhir.moments import Asked, asked_instant, asked_moment
from cases.api.fhir.types import TYPES, Type
from cases.exports.fhir.elements import as_json
from cases.queries import charts, resources, seen
from planning.foundation.encoding import sentence_of

Json = dict[str, Any]
Fits = Callable[[Json], bool]
USUAL_COUNT, MOST_COUNT = 50, 200
# Of one case there may be hundreds of steps and a record to make; a page ends here, and the next one goes on.
MOST_CASES = 20
MOST_DIGITS = 10  # of a number that somebody sends
# A row has its time before the log's line of the same transaction.
OVERLAP = timedelta(minutes=1)


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    resources: list[Json]
    after: str
    """Where the next page begins; empty where there is none."""


def page(type_: Type, query: QueryDict, reader: Reader) -> Page:
    """The resources that fit, from where the last page ended. Raises ValidationError."""
    _refuse_control_characters(query)
    count = _count(query)
    rows, fits = resources.cases(reader.asker, type_.name), []
    for moment in map(asked_moment, query.getlist("_lastUpdated")):
        fits.append(_updated(moment))
        if moment.least is not None:
            rows = charts.changed_since(rows, moment.least - OVERLAP)
    for name, parameter in type_.parameters.items():
        value = query.get(name)
        if value is None or parameter.kind == "date":
            continue
        if name == "_id":
            fits.append(_one_of(value))
            rows = resources.with_ids(rows, type_.name, value.split(","))
        elif name == "identifier":
            system, _, code = value.rpartition("|")
            fits.append(_identified(value))
            rows = resources.with_identifier(rows, type_.name, system, code, reader.asker)
        else:
            wanted = _reference(name, value, reader.base)
            fits.append(_refers(parameter.reads, wanted))
            rows = resources.with_ids(rows, wanted.partition("/")[0], [wanted.partition("/")[2]])
    begin, passed = _after(query)
    ids = list(rows.filter(pk__gte=begin).values_list("pk", flat=True)[: MOST_CASES + 1])
    return _page(type_, ids, passed if ids[:1] == [begin] else 0, count, fits, reader)


def _page(type_: Type, ids: list[UUID], passed: int, count: int, fits: list[Fits], reader: Reader) -> Page:
    """Up to `count` resources of the cases, `passed` of the first one having been shown; the case after the most that
    are looked at begins the next page.
    """
    shown: list[Json] = []
    for case_id in ids[:MOST_CASES]:
        fitting = (each for each in made(type_, case_id, reader) if all(fit(each) for fit in fits))
        left = list(islice(fitting, passed, passed + count - len(shown) + 1))
        room = count - len(shown)
        shown += left[:room]
        if len(left) > room:
            return Page(resources=shown, after=f"{case_id}.{passed + room}")
        passed = 0
    return Page(resources=shown, after=f"{ids[MOST_CASES]}.0" if len(ids) > MOST_CASES else "")


def made(type_: Type, case_id: UUID, reader: Reader) -> Iterator[Json]:
    """All of a type that a case has."""
    return map(as_json, type_.of_case(CaseRead(case_id, reader)))


def read(type_: Type, id_: str, reader: Reader) -> Json | None:
    """The resource with this id; None where the asker sees none."""
    rows = resources.with_ids(resources.cases(reader.asker, type_.name), type_.name, [id_])
    every = (each for case_id in rows.values_list("pk", flat=True) for each in made(type_, case_id, reader))
    return next((each for each in every if each["id"] == id_), None)


def everything(patient_id: str, query: QueryDict, reader: Reader) -> list[Json] | None:
    """The patient and the resources of their cases that the asker sees, of the types and changed since the time that
    were asked for; None where that is nobody. Raises ValidationError."""
    types, fits = _types(query.getlist("_type")), _since(query.get("_since"))
    rows = resources.with_ids(seen.cases(reader.asker).order_by("pk"), resources.PATIENT, [patient_id])
    case_ids = list(rows.values_list("pk", flat=True))
    every: list[Json] = []
    for number, case_id in enumerate(case_ids):
        case = CaseRead(case_id, reader)
        named = [each for each in types if number == 0 or not each.is_patient]
        every += (as_json(resource) for type_ in named for resource in type_.of_case(case))
    return [each for each in every if fits(each)] if case_ids else None


def _types(texts: list[str]) -> list[Type]:
    """Those that are named, with commas between; all where nothing is said. Raises ValidationError."""
    if not texts:
        return list(TYPES.values())
    names = ",".join(texts).split(",")
    if unknown := [name for name in names if name not in TYPES]:
        says = f"{unknown[0]} is no type that is sent here. Those are {', '.join(TYPES)}."
        raise ValidationError({"_type": [ErrorDetail(says, code="not-of-these")]})
    return [type_ for name, type_ in TYPES.items() if name in names]


def _since(text: str | None) -> Fits:
    """What was changed then or later. Raises ValidationError for what is no instant of FHIR's."""
    if text is None:
        return lambda each: True
    since = asked_instant("_since", text)
    return lambda each: datetime.fromisoformat(each["meta"]["lastUpdated"]) >= since


def _updated(asked: Asked) -> Fits:
    return lambda each: asked.fits(datetime.fromisoformat(each["meta"]["lastUpdated"]))


def _one_of(value: str) -> Fits:
    ids = frozenset(value.split(","))
    return lambda each: each["id"] in ids


def _identified(value: str) -> Fits:
    """By the value alone, or by the system too."""
    system, bar, code = value.rpartition("|")
    return lambda each: any(
        code == identifier["value"] and (not bar or system == identifier["system"]) for identifier in each["identifier"]
    )


def _refers(element: str, wanted: str) -> Fits:
    def fits(each: Json) -> bool:
        of_element = each.get(element, [])
        references = of_element if isinstance(of_element, list) else [of_element]
        return any(reference["reference"] == wanted for reference in references)

    return fits


def _reference(name: str, value: str, base: str) -> str:
    """Type and id of what is referred to. Raises ValidationError."""
    relative = value.removeprefix(f"{base}/")
    if "/" not in relative and name in ("patient", "subject"):
        relative = f"Patient/{relative}"
    if relative.count("/") != 1:
        says = "Write a type, a slash and an id, as references have it."
        raise ValidationError({name: [ErrorDetail(says, code="not-understood")]})
    return relative


def _refuse_control_characters(query: QueryDict) -> None:
    """No database takes all of them. Raises ValidationError."""
    wrong = [
        name for name, values in query.lists() if any(unicodedata.category(each) == "Cc" for each in "".join(values))
    ]
    if wrong:
        fault = ErrorDetail(sentence_of("control-characters"), code="control-characters")
        raise ValidationError({name: [fault] for name in wrong})


def _count(query: QueryDict) -> int:
    text = query.get("_count", str(USUAL_COUNT))
    if not (text.isascii() and text.isdecimal() and len(text) < MOST_DIGITS and int(text)):
        says = f"Must be a whole number from 1; no page has more than {MOST_COUNT}."
        raise ValidationError({"_count": [ErrorDetail(says, code="out-of-bounds")]})
    return min(int(text), MOST_COUNT)


def _after(query: QueryDict) -> tuple[UUID, int]:
    """At which case to begin, and how many of its resources were shown before. Raises ValidationError."""
    text = query.get("_after")
    if text is None:
        return UUID(int=0), 0
    case_id, _, passed = text.partition(".")
    try:
        if not (passed.isascii() and passed.isdecimal() and len(passed) < MOST_DIGITS):
            raise ValueError
        return UUID(case_id), int(passed)
    except ValueError:
        says = "Is not from this list: take it from a next link."
        raise ValidationError({"_after": [ErrorDetail(says, code="not-understood")]}) from None
