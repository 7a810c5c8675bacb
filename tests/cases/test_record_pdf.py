"""The record on paper, read back by another program (pypdf)."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from io import BytesIO

import pytest
from pypdf import PdfReader

from cases.domain.access.roles import Role
from cases.domain.events.kinds import EventKind
from cases.domain.record.values.record import Record
from cases.domain.record.values.timeline import RecordPerson, TimelineEntry
from cases.exports import typefaces
from cases.exports.record_course import course_pdf
from cases.exports.record_pdf import record_pdf
from cases.models import ToothPlanVersion
from cases.queries.record import record_of
from tests.cases import paper

pytestmark = pytest.mark.one_database

HASH = "5f" * 32
NOON = datetime(2026, 3, 5, 12, tzinfo=UTC)
PRIYA = RecordPerson(id="p", name="Priya", role=Role.STUDENT)


@pytest.fixture
def record(approved: ToothPlanVersion) -> Record:
    return record_of(approved.case_id).record


def pages(record: Record) -> list[str]:
    """The text of each page of both papers: the record, then every entry."""
    return [*paper.pages(record_pdf(record, HASH)), *paper.pages(course_pdf(record, HASH))]


def entries(*texts: str) -> tuple[TimelineEntry, ...]:
    return tuple(
        TimelineEntry(
            position=number,
            event_id=f"e{number}",
            at=NOON + timedelta(minutes=number),
            device_time=NOON,
            who=PRIYA,
            canal="DB",
            kind=EventKind.NOTE,
            says=text,
            version=1,
        )
        for number, text in enumerate(texts, start=1)
    )


def test_every_page_says_whose_it_is_and_that_it_is_for_training(record: Record) -> None:
    many = replace(record, timeline=entries(*(f"Note {number}" for number in range(80))))
    read = paper.pages(course_pdf(many, HASH))
    assert len(read) >= 2
    for number, page in enumerate(read, start=1):
        assert f"Training record · Bench 1 · tooth 26 · case {record.case_id}" in page
        assert "does not replace the supervising licensed clinician" in page
        assert f"page {number} of {len(read)}" in page
        assert f"SHA-256 {HASH}" in page


def test_a_long_timeline_repeats_its_heads_and_each_entry_is_there_once(record: Record) -> None:
    notes = [f"Note number {number}." for number in range(100, 220)]
    read = pages(replace(record, timeline=entries(*notes)))
    with_entries = [page for page in read if "Note number" in page]
    assert len(with_entries) >= 2
    assert all("Entry At (device) Who Canal What" in page for page in with_entries)
    assert [" ".join(read).count(note) for note in notes] == [1] * len(notes)


def test_what_was_taken_back_says_so_in_words(record: Record) -> None:
    (entry,) = entries("10/.02: at its stop")
    assert "10/.02: at its stop. TAKEN BACK" in " ".join(
        pages(replace(record, timeline=(replace(entry, undone=True),)))
    )


def test_names_and_notes_in_any_script_are_there(record: Record) -> None:
    names = ["Ñandú Größe", "Ελληνικά", "Журавль", "牙齿 七", "치아", "はいしゃ", "दवा", "שן", "Reed 🦷"]
    text = " ".join(pages(replace(record, patient_alias="牙齿", timeline=entries(*names))))
    assert [name for name in names if name not in text] == []
    assert "Training record · 牙齿 · tooth 26" in text


def test_a_character_that_no_typeface_has_is_named_by_its_number(record: Record) -> None:
    """U+16A0 is a rune, which none of the typefaces draws."""
    assert "Reed [U+16A0]" in pages(replace(record, patient_alias="Reed \u16a0"))[0]


BY_NUMBER = "Signs that no typeface here has are named by their number in Unicode, as [U+16A0]"


def test_without_its_extra_east_asian_writing_is_named_by_numbers_and_the_record_says_so(
    record: Record, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The numbers of 牙齿, 치 and は are Unicode's."""
    named = replace(record, patient_alias="牙齿", timeline=entries("치 and は", "Журавль"))
    assert BY_NUMBER not in pages(named)[0]
    monkeypatch.setattr(typefaces, "find_spec", lambda name: None)  # as where it was never installed
    typefaces._files.cache_clear()
    try:
        read = pages(named)
    finally:
        typefaces._files.cache_clear()
    assert BY_NUMBER in read[0]
    assert all("Training record · [U+7259][U+9F7F] · tooth 26" in page for page in read)
    assert "[U+CE58] and [U+306F]" in " ".join(read)
    assert "Журавль" in " ".join(read)


def test_markup_in_what_people_write_is_only_text(record: Record) -> None:
    markup = "**bold** __under__ ~~struck~~ {nb} <b>x</b>"
    assert markup in " ".join(pages(replace(record, timeline=entries(markup))))


def test_the_same_record_is_the_same_bytes(record: Record) -> None:
    assert record_pdf(record, HASH) == record_pdf(record, HASH)


def test_nothing_is_in_colour(record: Record) -> None:
    """A grey of the PDF's colour operators (ISO 32000-1, 8.6.8) has three equal shares."""
    read = PdfReader(BytesIO(record_pdf(record, HASH)))
    drawn = b"".join(page.get_contents().get_data() for page in read.pages if page.get_contents())  # type: ignore[union-attr]
    colours = re.findall(rb"([\d.]+) ([\d.]+) ([\d.]+) (?:rg|RG)\b", drawn)
    assert all(red == green == blue for red, green, blue in colours)
    assert not re.search(rb"[\d.]+ [\d.]+ [\d.]+ [\d.]+ [kK]\b", drawn)


def test_what_fills_more_than_a_page_and_a_word_wider_than_its_column_lose_nothing(record: Record) -> None:
    words = " ".join(f"w{number:04d}" for number in range(1500))
    wide = "".join(f"<{number:03d}>" for number in range(40))
    read = pages(replace(record, timeline=entries(words, wide)))
    assert len([page for page in read if "w0" in page or "w1" in page]) >= 2
    text = " ".join(read)
    assert [word for word in words.split() if text.count(word) != 1] == []
    assert [
        part for part in (f"{number:03d}" for number in range(40)) if f"<{part}>" not in text.replace(" ", "")
    ] == []
