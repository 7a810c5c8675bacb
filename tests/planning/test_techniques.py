"""Techniques as data: those provided, and what a programme's own is refused for."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from planning.errors import TechniqueNotUsable
from planning.plan import plan
from planning.tables import DATA
from planning.technique_files import provided, read, refuse_unusable
from planning.techniques import Phase, PhaseKind, Setting, Technique
from tests.planning.given import molar, technique

TEXT = (DATA / "techniques" / "crown-down.toml").read_text(encoding="utf-8")


def with_phase(key: str, **changes: Any) -> Technique:
    given = technique("crown-down")
    return replace(given, phases=tuple(replace(p, **changes) if p.key == key else p for p in given.phases))


def without(*keys: str) -> tuple[Phase, ...]:
    return tuple(p for p in technique("crown-down").phases if p.key not in keys)


def test_each_provided_technique_serves_every_setting() -> None:
    assert set(provided()) == {"crown-down", "step-back"}
    for each in provided().values():
        for setting in Setting:
            planned = plan(molar(technique=each, setting=setting, isolated=True))
            assert not any(canal.withheld for canal in planned.canals)


def test_every_provided_technique_names_its_source() -> None:
    assert all(each.source and each.know for each in provided().values())


CROWN_DOWN = technique("crown-down")
UNUSABLE: list[tuple[str, Technique, str]] = [
    ("no phases", replace(CROWN_DOWN, phases=()), "no phases"),
    ("a key twice", replace(CROWN_DOWN, phases=(*CROWN_DOWN.phases, CROWN_DOWN.phases[0])), "taken"),
    ("a hold point without a name", with_phase("length", hold_point=None), "hold_point"),
    ("descending alone", replace(CROWN_DOWN, phases=without("ascending")), "ascending one after"),
    ("ascending alone", replace(CROWN_DOWN, phases=without("descending")), "descending one before"),
    (
        "the wrong way round",
        replace(CROWN_DOWN, phases=(*without("descending"), CROWN_DOWN.phases[6])),
        "descending one before",
    ),
    ("repeating from nowhere", with_phase("descending", repeat_from="coronal"), "no earlier phase"),
    (
        "repeating from a phase of another setting",
        with_phase("coronal-flaring", settings=(Setting.BLOCK,)),
        "no earlier phase of this setting",
    ),
    ("more passes expected than allowed", with_phase("descending", expected_passes=4), "more passes"),
    ("no passes", with_phase("descending", most_passes=0, expected_passes=0), "above 0"),
    ("a size that is none", with_phase("explore", from_size=11), "ISO sizes"),
    ("sizes the wrong way round", with_phase("glide-path", from_size=25), "above to_size"),
    ("for no setting", with_phase("rinse", settings=()), "no setting"),
    ("a series that goes down", replace(CROWN_DOWN, series_sizes_up=-1), "goes up"),
    ("a small file that is no size", replace(CROWN_DOWN, recapitulate_size=11), "no ISO size"),
]


@pytest.mark.parametrize(("unusable", "says"), [case[1:] for case in UNUSABLE], ids=[case[0] for case in UNUSABLE])
def test_a_technique_that_contradicts_itself_is_refused(unusable: Technique, says: str) -> None:
    with pytest.raises(TechniqueNotUsable, match=says):
        refuse_unusable(unusable, where="mine")
    with pytest.raises(TechniqueNotUsable, match=says):
        plan(molar(technique=unusable))


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("key = ", "mine.toml: not TOML"),
        (TEXT.replace('kind = "flare"', 'kind = "flair"'), "mine.toml: phases.4.kind"),
        (TEXT.replace("most_passes", "most_passages"), "mine.toml: phases.6"),
    ],
)
def test_a_file_that_is_not_understood_names_file_and_place(text: str, says: str) -> None:
    with pytest.raises(TechniqueNotUsable, match=says):
        read(text, where="mine.toml")


def test_a_programme_copies_and_changes_a_technique() -> None:
    mine = read(TEXT.replace("most_passes = 3", "most_passes = 4"), where="mine.toml")
    descend = next(p for p in mine.phases if p.kind is PhaseKind.DESCEND)
    assert descend.most_passes == 4
    assert plan(molar(technique=mine)).technique == "Crown-down"
