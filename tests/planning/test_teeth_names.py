"""Names of the 52 teeth against lists that others keep."""

from __future__ import annotations

import re
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydicom.sr import _cid_dict, _concepts_dict

from planning.anatomy import Notation, NotationMissing, ToothName, all_teeth, find
from planning.foundation.errors import UnknownTooth

PERMANENT, PRIMARY = "4018", "4019"
"""DICOM PS3.16, context groups CID 4018 (permanent teeth) and CID 4019 (deciduous teeth), as pydicom carries them."""

SLIPS = {
    "Mandibular left lateral tooth": "Mandibular left lateral incisor tooth",
}
"""Where that list leaves a word out."""

BY_HAND = """
18 1 UR8  17 2 UR7  16 3 UR6  15 4 UR5  14 5 UR4  13 6 UR3  12 7 UR2  11 8 UR1
21 9 UL1  22 10 UL2  23 11 UL3  24 12 UL4  25 13 UL5  26 14 UL6  27 15 UL7  28 16 UL8
38 17 LL8  37 18 LL7  36 19 LL6  35 20 LL5  34 21 LL4  33 22 LL3  32 23 LL2  31 24 LL1
41 25 LR1  42 26 LR2  43 27 LR3  44 28 LR4  45 29 LR5  46 30 LR6  47 31 LR7  48 32 LR8
55 A URE  54 B URD  53 C URC  52 D URB  51 E URA  61 F ULA  62 G ULB  63 H ULC  64 I ULD  65 J ULE
75 K LLE  74 L LLD  73 M LLC  72 N LLB  71 O LLA  81 P LRA  82 Q LRB  83 R LRC  84 S LRD  85 T LRE
"""
"""Written down round the mouth, as a chart shows them, not row by row like the data file."""

HAND = [re.split(r"\s+", each.strip()) for each in re.split(r"\s{2,}|\n", BY_HAND.strip())]


def in_(notation: Notation, designation: str) -> str:
    return find(ToothName(notation=notation, designation=designation)).iso


def test_the_hand_table_is_whole() -> None:
    assert len(HAND) == len({iso for iso, _, _ in HAND}) == 52
    assert {tooth.iso for tooth in all_teeth()} == {iso for iso, _, _ in HAND}


@pytest.mark.parametrize(("iso", "universal", "palmer"), HAND)
def test_one_tooth_in_three_notations(iso: str, universal: str, palmer: str) -> None:
    assert in_(Notation.ISO_3950, iso) == iso
    assert in_(Notation.UNIVERSAL, universal) == iso
    assert in_(Notation.PALMER, palmer) == iso
    tooth = find(ToothName(notation=Notation.ISO_3950, designation=iso))
    assert (tooth.universal, tooth.palmer) == (universal, palmer)
    assert in_(Notation.PALMER, tooth.palmer_glyph) == iso


@pytest.mark.parametrize(("group", "primary"), [(PERMANENT, False), (PRIMARY, True)])
def test_names_agree_with_dicom(group: str, primary: bool) -> None:
    ours = {_words(tooth.name) for tooth in all_teeth() if tooth.primary is primary}
    theirs = {_words(SLIPS.get(name, name)) for name in _dicom_names(group)}
    assert len(theirs) == (20 if primary else 32)
    assert ours == theirs


def test_each_name_belongs_to_its_iso_number() -> None:
    """ISO 3950: the first digit is the quadrant, the second the position from the midline."""
    quadrants = {
        1: "maxillary right",
        2: "maxillary left",
        3: "mandibular left",
        4: "mandibular right",
    }
    positions = [
        "central incisor",
        "lateral incisor",
        "canine",
        "first premolar",
        "second premolar",
        "first molar",
        "second molar",
        "third molar",
    ]
    milk = ["central incisor", "lateral incisor", "canine", "first molar", "second molar"]
    for tooth in all_teeth():
        quadrant, position = int(tooth.iso[0]), int(tooth.iso[1])
        kinds = milk if tooth.primary else positions
        where = quadrants[quadrant - 4 if tooth.primary else quadrant]
        assert tooth.name.lower().removeprefix("deciduous ") == f"{where} {kinds[position - 1]}"


def test_glyphs_are_the_dentistry_symbols() -> None:
    """Unicode: U+23CC, U+23BF, U+23BE, U+23CB are the corners of Palmer's cross."""
    glyph = {tooth.iso: tooth.palmer_glyph for tooth in all_teeth()}
    assert [glyph[iso] for iso in ("16", "26", "36", "46")] == ["6\u23cc", "\u23bf6", "\u23be6", "6\u23cb"]
    assert glyph["55"] == "E\u23cc"


@pytest.mark.parametrize("written", ["UL6", "ul6", " UL 6 ", "⎿6", "⎿ 6", "└6"])
def test_case_blanks_and_look_alikes_are_tolerated(written: str) -> None:
    assert in_(Notation.PALMER, written) == "26"


def test_a_primary_tooth_is_found_and_marked() -> None:
    assert find(ToothName(notation=Notation.UNIVERSAL, designation="k")).primary
    assert not find(ToothName(notation=Notation.UNIVERSAL, designation="19")).primary


def test_14_without_its_notation_is_refused_with_both_teeth_it_could_be() -> None:
    with pytest.raises(NotationMissing) as refused:
        find(ToothName(designation="14"))
    assert "In ISO 3950 it is the maxillary right first premolar" in str(refused.value)
    assert "in Universal it is the maxillary left first molar" in str(refused.value)
    assert refused.value.pointer == ("notation",)


@pytest.mark.parametrize(
    ("notation", "designation", "hint"),
    [
        (Notation.ISO_3950, "19", "In Universal it is the mandibular left first molar."),
        (Notation.ISO_3950, "99", "quadrants 1 to 4"),
        (Notation.ISO_3950, "29", "In Universal it is the mandibular right second premolar."),
        (Notation.UNIVERSAL, "33", "In ISO 3950 it is the mandibular left canine."),
        (Notation.UNIVERSAL, "52", "In ISO 3950 it is the deciduous maxillary right lateral incisor."),
        (Notation.UNIVERSAL, "60", "Supernumerary teeth are not planned here."),
        (Notation.PALMER, "14", "in Universal it is the maxillary left first molar."),
        (Notation.PALMER, "UL9", "UL6 or ⎿6"),
        (Notation.PALMER, "", "UL6 or ⎿6"),
    ],
)
def test_what_is_no_tooth_is_refused_with_what_it_could_be(notation: Notation, designation: str, hint: str) -> None:
    with pytest.raises(UnknownTooth) as refused:
        find(ToothName(notation=notation, designation=designation))
    assert hint in str(refused.value)
    assert refused.value.pointer == ("designation",)


@given(st.sampled_from(Notation), st.text(max_size=30))
def test_any_text_is_a_tooth_or_a_refusal_with_a_hint(notation: Notation, text: str) -> None:
    try:
        tooth = find(ToothName(notation=notation, designation=text))
    except UnknownTooth as refusal:
        outcome = refusal.fields["hint"]
    else:
        plain = "".join(text.split()).upper()
        outcome = plain in (tooth.iso, tooth.universal, tooth.palmer) or set(plain) & set("⎿⎾⏌⏋└┌┘┐")
    assert outcome


def _dicom_names(group: str) -> list[str]:
    concepts: Any = _concepts_dict.concepts
    return [
        meaning
        for scheme, names in _cid_dict.cid_concepts[int(group)].items()
        for name in names
        for meaning, groups in concepts[scheme][name].values()
        if int(group) in groups
    ]


def _words(name: str) -> frozenset[str]:
    """What tells one tooth from another: the order of words and the word 'tooth' differ between lists."""
    filler = {"tooth", "permanent", "deciduous", "primary"}
    return frozenset(re.findall(r"[a-z]+", name.lower())) - filler
