"""Paper for what is printed of a record: its head, and the lines on every page."""

from __future__ import annotations

import string
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

from cases.domain.record.values.record import Record
from cases.exports.paper import Paper
from cases.exports.typefaces import faces
from planning.foundation.encoding import canonical_text

LETTERS = string.ascii_letters + string.digits + string.punctuation + " ·"
_BY_NUMBER = (
    "Signs that no typeface here has are named by their number in Unicode, as [U+16A0]; "
    "the record in the app shows them."
)


@contextmanager
def record_paper(record: Record, record_hash: str, title: str) -> Iterator[Paper]:
    """A page with its headline. `record_hash` is printed, so that it can be compared with the one kept."""
    with TemporaryDirectory() as folder:
        # The glyph of the Palmer notation is not printed, and only one large typeface has it.
        text = canonical_text(record).replace(record.tooth.palmer_glyph, "")
        paper = Paper(
            top=f"Training record · {record.patient_alias} · tooth {record.tooth.iso} · case {record.case_id}",
            below=f"{record.notice} SHA-256 {record_hash}",
            seal=record_hash,
            at=record.last_at,
            faces=faces(text + LETTERS, Path(folder)),
        )
        paper.set_title(f"{title}, {record.patient_alias}, tooth {record.tooth.iso}")
        paper.add_page()
        paper.headline(f"{title}: {record.tooth.name} ({record.tooth.iso})")
        if paper.faces.lacking:
            paper.paragraph(_BY_NUMBER, bold=True)
        yield paper
