"""What another system's key may look like.

Keys as other systems make them are from their own standards: UUIDs (RFC 9562), unique identifiers of DICOM (PS3.5, 9),
accession numbers, paths of a course; what no key is are ways to write a person, made up here.
"""

from __future__ import annotations

import pytest

from cases.domain.external_id import MOST_CHARACTERS, external_id_of
from cases.domain.program_errors import ExternalIdRefused

KEYS = [
    "4711",
    "10482393",
    "0190f5fe-7c00-7a00-8000-000000000001",
    "1.2.840.10008.5.1.4.1.1.2",
    "1.2.826.0.1.3680043.8.498.11.12.24",
    "urn:course:7:item:3120",
    "course-7.item-3120",
    "order-2026-11-30-4",
    "A" * MOST_CHARACTERS,
]
NO_KEYS = [
    "",
    "A" * (MOST_CHARACTERS + 1),
    "-4711",
    "47 11",
    "47/11",
    "anna@school.example",
    "Zoë",
    "4711\n",
    "٤٧١١",
    "1999-04-12",
    "12.04.1999",
    "12_04_99",
    "anna.miller",
    "Anna_Miller",
    "dr.miller",
]


@pytest.mark.parametrize("key", KEYS)
def test_a_key_of_another_system_is_taken_as_it_is(key: str) -> None:
    assert external_id_of(key) == key


@pytest.mark.parametrize("key", NO_KEYS)
def test_what_is_no_key_or_leads_to_a_person_is_refused(key: str) -> None:
    with pytest.raises(ExternalIdRefused) as refusal:
        external_id_of(key)
    assert refusal.value.pointer == ("external_id",)
