"""By which key another system knows a case, a person or a kit: its own key, and nothing that leads to a person."""

from __future__ import annotations

import re

from cases.domain.alias import can_be_date, looks_like_a_name
from cases.domain.program_errors import ExternalIdRefused

AT = ("external_id",)
MOST_CHARACTERS = 64  # as an identifier of DICOM (PS3.5, 6.2, UI) or of FHIR (R4, data type id) has
PATTERN = rf"[A-Za-z0-9][A-Za-z0-9._:-]{{0,{MOST_CHARACTERS - 1}}}"
_DATE = re.compile(r"(\d{1,4})[.:_-](\d{1,2})[.:_-](\d{1,4})")


def external_id_of(text: str) -> str:
    """The same. Long numbers are usual in keys, so they are taken, other than in an alias. Raises ExternalIdRefused."""
    if not re.fullmatch(PATTERN, text):
        reason = (
            f"An external id has 1 to {MOST_CHARACTERS} letters (A to Z), digits, full stops, low lines, colons and "
            "hyphens, and begins with a letter or a digit."
        )
        raise ExternalIdRefused(at=AT, reason=reason)
    # As a whole: within a longer key, three numbers in a row are a date by chance.
    date = _DATE.fullmatch(text)
    if date and can_be_date(date.groups()):
        raise ExternalIdRefused(at=AT, reason="This looks like a date, of birth perhaps. Send the key of the row.")
    if looks_like_a_name(text):
        raise ExternalIdRefused(at=AT, reason="This looks like somebody's name. Send the key of the row in its place.")
    return text
