# ruff: noqa: RUF001  letters that look like others are what is tested
"""What may stand as an alias. Judges: UAX #9 for the characters that turn text round, Unicode's own data for digits and
widths, RFC 5322 for addresses; dates and numbers as people write them are common practice, no source.
"""

from __future__ import annotations

import sys
import tomllib
import unicodedata
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

import cases
from cases.domain.alias import BIDI, alias_of
from cases.domain.errors import AliasLooksLikeAName, AliasRefused


@pytest.mark.parametrize(
    "alias",
    [
        "Reed 12",
        "Bench tooth A1",
        "Training block 3",
        "Evening tooth 1",
        "Heron",
        "Bench 1",
        "牙齿",
        "ريشة ٧",
        "Ζ-12",
        "Block №4",
        "Bench 12 26",
        "Ward 3-2-1",
        "May 12",
        "Dr 3",
        "Room 4/5",
        "O'Reed 4",
        "Été 2",
        "Tooth a",
        "Heron B",
        "evening tooth 1",
        "Spare molar, row 2",
        "Drawn tooth 2 of draw 1",
    ],
)
def test_an_alias_is_taken_as_it_is(alias: str) -> None:
    assert alias_of(alias, is_no_name=False) == alias


def test_the_demonstration_s_own_are_taken() -> None:
    demonstration = tomllib.loads((Path(cases.__file__).parent / "demo" / "quayside.toml").read_text(encoding="utf-8"))
    aliases = [each["alias"] for each in demonstration["cases"]]
    assert [alias_of(alias, is_no_name=False) for alias in aliases] == aliases


@pytest.mark.parametrize("character", sorted(BIDI))
def test_what_turns_text_round_is_refused(character: str) -> None:
    with pytest.raises(AliasRefused, match="cannot be seen"):
        alias_of(f"Reed{character} 12", is_no_name=True)


def test_the_characters_that_turn_text_round_are_those_of_the_standard() -> None:
    """UAX #9, table 4: the explicit ones have these classes; three marks are strong and format characters."""
    classes = {"LRE", "RLE", "LRO", "RLO", "PDF", "LRI", "RLI", "FSI", "PDI"}
    strong = set(map(unicodedata.lookup, ("LEFT-TO-RIGHT MARK", "RIGHT-TO-LEFT MARK", "ARABIC LETTER MARK")))
    explicit = {c for c in map(chr, range(sys.maxunicode)) if unicodedata.bidirectional(c) in classes}
    assert explicit | strong == BIDI


CONTROLS = st.characters(categories=["Cc", "Cf", "Co", "Cn", "Zl", "Zp"])


@given(CONTROLS, st.integers(0, 4))
def test_what_cannot_be_seen_is_refused(character: str, at: int) -> None:
    with pytest.raises(AliasRefused):
        alias_of("Reed"[:at] + character + "Reed"[at:], is_no_name=True)


@pytest.mark.parametrize("blank", ["\u3164", "\u115f", "\ufe0f", "\u2800", "\u180b", "\u034f", "\U000e0100", "\u00ad"])
def test_what_is_blank_is_refused(blank: str) -> None:
    with pytest.raises(AliasRefused):
        alias_of(f"Reed{blank}12", is_no_name=True)


def test_a_heap_of_accents_is_refused() -> None:
    with pytest.raises(AliasRefused, match="cannot be read"):
        alias_of("Re\u0301\u0302\u0303\u0304ed", is_no_name=True)


@pytest.mark.parametrize(
    "address",
    [
        "a.keller@example.org",
        '"a b"@example.org',
        "x@[192.0.2.1]",
        "keller @ example.org",
        "a＠example.org",
        "Reed 12, a+b@mail.example",
    ],
)
def test_an_address_is_refused(address: str) -> None:
    with pytest.raises(AliasRefused, match="e-mail"):
        alias_of(address, is_no_name=True)


@pytest.mark.parametrize(
    "date",
    [
        "12.3.1987",
        "Reed 12/03/87",
        "1987-03-12",
        "12-Mar-1987",
        "March 12, 1987",
        "12 march 87",
        "3/12/1987",
        "12 . 3 . 1987",
        "١٢/٣/١٩٨٧",
        "１２．３．１９８７",
        "12–3–1987",
        "1987年3月12日",
        "12 03 1987",
    ],
)
def test_a_date_is_refused(date: str) -> None:
    with pytest.raises(AliasRefused, match="date"):
        alias_of(date, is_no_name=True)


@pytest.mark.parametrize(
    "number",
    [
        "791234567",
        "0791 234 567",
        "+41 79 123",
        "756.1234",
        "AB123456C",
        "٧٩١٢٣٤",
        "１２３４５６",
        "12-34-99-7",
        "123 456",
    ],
)
def test_a_long_number_is_refused(number: str) -> None:
    with pytest.raises(AliasRefused, match="digits"):
        alias_of(f"Reed {number}", is_no_name=True)


@pytest.mark.parametrize(
    "name",
    [
        "Anna Keller",
        "KELLER Anna",
        "Keller, Anna",
        "Mr Keller",
        "mrs. keller",
        "Dr. A",
        "Jean-Luc O'Neill",
        "Anna Keller 7",
        "Анна Келлер",
        "محمد علي",
        "Bench of Anna Keller",
        "anna keller",
        "Anna keller",
        "A. Keller",
        "Keller A.",
        "van der Berg",
        "anna.keller",
        "anna_keller 7",
    ],
)
def test_what_looks_like_a_name_is_asked_about_once(name: str) -> None:
    with pytest.raises(AliasLooksLikeAName):
        alias_of(name, is_no_name=False)
    assert alias_of(name, is_no_name=True) == name


def test_what_is_said_to_be_no_name_is_still_no_date() -> None:
    with pytest.raises(AliasRefused, match="date"):
        alias_of("Anna Keller 12.3.1987", is_no_name=True)


@pytest.mark.parametrize(
    ("typed", "kept"),
    [("  Reed   12 ", "Reed 12"), ("Ｒｅｅｄ １２", "Reed 12"), ("E\u0301te\u0301 2", "Été 2"), ("ﾊﾞﾝ", "バン")],
)
def test_one_alias_is_kept_in_one_way(typed: str, kept: str) -> None:
    assert alias_of(typed, is_no_name=False) == kept


@pytest.mark.parametrize("nothing", ["", " ", "\u3000", "x" * 41])
def test_nothing_or_too_much_is_refused(nothing: str) -> None:
    with pytest.raises(AliasRefused):
        alias_of(nothing, is_no_name=True)


@given(st.text(max_size=40), st.booleans())
def test_whatever_is_taken_is_taken_again_the_same(text: str, is_no_name: bool) -> None:
    try:
        kept = alias_of(text, is_no_name=is_no_name)
    except (AliasRefused, AliasLooksLikeAName):
        return
    assert alias_of(kept, is_no_name=is_no_name) == kept
    assert unicodedata.is_normalized("NFC", kept)
