"""Techniques as data: those provided_techniques, and what a programme's own is refused for."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from planning.foundation.errors import TechniqueFileRefused, TechniqueNotUsable
from planning.foundation.tables import DATA
from planning.run_sheet.graph import Action, Step, why_unsound
from planning.techniques.files import provided_techniques, read_technique, refuse_unusable
from planning.techniques.rules import faults
from planning.techniques.technique import Phase, PhaseKind, Setting, Technique
from planning.whole_tooth.plan import plan
from planning.whole_tooth.technique_check import check
from tests.planning.given import molar, technique

TEXT = (DATA / "techniques" / "crown-down.toml").read_text(encoding="utf-8")


def with_phase(key: str, **changes: Any) -> Technique:
    crown_down = technique("crown-down")
    return replace(crown_down, phases=tuple(replace(p, **changes) if p.key == key else p for p in crown_down.phases))


def without(*keys: str) -> tuple[Phase, ...]:
    return tuple(p for p in technique("crown-down").phases if p.key not in keys)


def test_each_provided_technique_serves_every_setting() -> None:
    assert set(provided_techniques()) == {"crown-down", "step-back"}
    for each in provided_techniques().values():
        for setting in Setting:
            planned = plan(molar(technique=each, setting=setting, isolated=True))
            assert not any(canal.withheld for canal in planned.canals)


def test_every_provided_technique_names_its_source() -> None:
    assert all(each.source and each.know for each in provided_techniques().values())


CROWN_DOWN = technique("crown-down")


def flared_in_blocks(phase: Phase) -> Phase:
    return replace(phase, settings=(Setting.BLOCK,)) if phase.kind is PhaseKind.FLARE else phase


GAUGING = [phase for phase in CROWN_DOWN.phases if phase.kind is PhaseKind.GAUGE]
UNUSABLE: list[tuple[str, Technique, str]] = [
    ("no phases", replace(CROWN_DOWN, phases=()), "no phases"),
    ("a key twice", replace(CROWN_DOWN, phases=(*CROWN_DOWN.phases, CROWN_DOWN.phases[0])), "taken"),
    ("a hold point without a name", with_phase("length", hold_point=None), "hold_point"),
    ("descending alone", replace(CROWN_DOWN, phases=without("ascending")), "ascending one after"),
    ("ascending alone", replace(CROWN_DOWN, phases=without("descending")), "descending one before"),
    (
        "the wrong way round",
        replace(CROWN_DOWN, phases=(*without("descending"), CROWN_DOWN.phases[7])),
        "descending one before",
    ),
    ("repeating from nowhere", with_phase("descending", repeat_from="coronal"), "no earlier phase"),
    (
        "repeating from a phase of another setting",
        replace(CROWN_DOWN, phases=tuple(map(flared_in_blocks, without("first-binder")))),
        "no earlier phase of this setting",
    ),
    (
        "gauging before flaring",
        replace(CROWN_DOWN, phases=(*GAUGING, *without("first-binder"))),
        "Put it after flaring",
    ),
    ("gauging what was shaped", replace(CROWN_DOWN, phases=(*without("first-binder"), *GAUGING)), "before what shapes"),
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


def line_of(words: str) -> int:
    """Counted by hand, so to speak: the first line of the provided file that holds the words."""
    return next(number for number, line in enumerate(TEXT.splitlines(), start=1) if words in line)


def in_phase(key: str, old: str, new: str) -> str:
    """The provided file with one line of one phase changed."""
    before, after = TEXT.split(f'key = "{key}"')
    return f'{before}key = "{key}"{after.replace(old, new, 1)}'


DESCENDING = line_of('key = "descending"')
FAULTY: list[tuple[str, str, int, str]] = [
    ("no value", "key = ", 1, "not TOML"),
    ("a text not ended", TEXT.replace('title = "Explore"', 'title = "Explore'), line_of('"Explore"'), "not TOML"),
    ("an unknown kind", TEXT.replace('kind = "flare"', 'kind = "flair"'), line_of('kind = "flare"'), "kind: Must be"),
    (
        "an unknown key",
        TEXT.replace("most_passes", "most_passages"),
        line_of("most_passes"),
        "most_passages: Is",
    ),
    (
        "a text for a number",
        TEXT.replace("most_passes = 3", 'most_passes = "3"'),
        line_of("most_passes"),
        "whole number",
    ),
    ("a key of the whole left out", TEXT.replace('name = "Crown-down"', ""), 1, "name: Fill"),
    ("a key of a phase left out", in_phase("descending", 'kind = "descend"', ""), DESCENDING - 1, "kind: Fill"),
    ("without end", in_phase("descending", "most_passes = 3", ""), DESCENDING - 1, "must state most_passes"),
    ("too many passes", in_phase("descending", "most_passes = 3", "most_passes = 11"), DESCENDING + 4, "has to end"),
    (
        "a key twice",
        in_phase("rinse", 'title = "Final rinse"', 'title = "x"\nkey = "y"'),
        line_of('"rinse"') + 2,
        "not TOML",
    ),
    (
        "a size that is none",
        in_phase("explore", "from_size = 10", "from_size = 11"),
        line_of("from_size"),
        "11 is none",
    ),
]


@pytest.mark.parametrize(("text", "line", "says"), [case[1:] for case in FAULTY], ids=[case[0] for case in FAULTY])
def test_a_file_that_cannot_be_used_names_file_line_and_what_is_wrong(text: str, line: int, says: str) -> None:
    with pytest.raises(TechniqueFileRefused, match=says) as refusal:
        read_technique(text, where="mine.toml")
    assert refusal.value.faults[0][0] == line
    assert str(refusal.value).startswith(f"mine.toml, line {line}: ")


def test_all_that_is_wrong_is_told_at_once_from_top_to_bottom() -> None:
    text = in_phase("glide-path", "to_size = 20", "to_size = 21").replace("most_passes = 3", "most_passes = 0")
    with pytest.raises(TechniqueFileRefused, match=r"And 1 more\.$") as refusal:
        read_technique(text, where="mine.toml")
    lines = [line for line, _, _ in refusal.value.faults]
    assert lines == [line_of("to_size = 20"), line_of("most_passes")]


UNSAFE: list[tuple[str, Technique, str, tuple[str | int, ...]]] = [
    (
        "shaping before the length",
        replace(CROWN_DOWN, phases=without("length")),
        "before any length is signed off. Put a phase",
        ("phases", 2),
    ),
    (
        "a length signed off without an image",
        with_phase("length", image=False),
        "before any length is signed off",
        ("phases", 3),
    ),
    (
        "a length signed off in one setting only",
        with_phase("length", settings=(Setting.CLINIC,)),
        "setting 'block': it goes to length before",
        ("phases", 3),
    ),
    ("no rinse", replace(CROWN_DOWN, phases=without("rinse")), "Put a phase of kind 'rinse' before it", ("phases", 10)),
    (
        "no rinse and nothing after it",
        replace(CROWN_DOWN, phases=without("rinse", "cone", "fill")),
        "no rinse follows it. Put a phase of kind 'rinse' after it",
        ("phases", 8),
    ),
    (
        "rinsed before it is shaped to the end",
        replace(CROWN_DOWN, phases=(*CROWN_DOWN.phases[:5], CROWN_DOWN.phases[10], *without("rinse")[5:])),
        "has not been rinsed since it was shaped",
        ("phases", 11),
    ),
    (
        "nothing recapitulated",
        replace(CROWN_DOWN, recapitulate_size=25),
        "smaller sizes would not be recapitulated after. Start at 25",
        ("phases", 3, "from_size"),
    ),
    (
        "exploring that shapes",
        with_phase("explore", to_size=40),
        "nothing larger than the recapitulating size goes: set to_size = 10",
        ("phases", 1, "to_estimate"),
    ),
    (
        "exploring up to the final size",
        with_phase("explore", to_size=None),
        "nothing larger than the recapitulating size",
        ("phases", 1, "to_estimate"),
    ),
    (
        "to resistance without bound",
        with_phase("descending", most_passes=None),
        "must state most_passes",
        ("phases", 7),
    ),
    (
        "to resistance for longer than anything gains",
        with_phase("descending", most_passes=50),
        "whatever repeats has to end",
        ("phases", 7, "most_passes"),
    ),
]


@pytest.mark.parametrize(("unsafe", "says", "at"), [case[1:] for case in UNSAFE], ids=[case[0] for case in UNSAFE])
def test_a_technique_that_leaves_out_what_keeps_a_canal_safe_is_refused(
    unsafe: Technique, says: str, at: tuple[str | int, ...]
) -> None:
    assert at in [place for place, _ in faults(unsafe)]
    with pytest.raises(TechniqueNotUsable, match=says) as refusal:
        refuse_unusable(unsafe, where="mine")
    assert refusal.value.pointer == at


# --- tried out on a check canal ---


@pytest.mark.parametrize("key", ["crown-down", "step-back"])
def test_what_is_provided_is_worked_to_its_end_in_every_setting(key: str) -> None:
    tried = check(technique(key)).settings
    assert [trial.setting for trial in tried] == list(Setting)
    for trial in tried:
        assert trial.phases == tuple(phase.key for phase in technique(key).phases if trial.setting in phase.settings)
        assert trial.withheld == ()
        assert "length" in trial.hold_points


def loops_of(crown_down: Technique) -> Technique:
    """Repeats from the exploring: a hold point and a rinse lie in the loop."""
    phases = tuple(replace(p, repeat_from="explore") if p.key == "descending" else p for p in crown_down.phases)
    return replace(crown_down, phases=phases)


def test_every_walk_of_a_technique_that_repeats_from_far_back_ends() -> None:
    looped = loops_of(CROWN_DOWN)
    for setting, trial in zip(Setting, check(looped).settings, strict=True):
        made = plan(molar(technique=looped, setting=setting, isolated=True))
        assert trial.steps > 0
        assert all(why_unsound(canal.run_sheet) == "" for canal in made.canals)


def test_a_technique_that_would_need_a_size_that_is_not_made_is_refused_with_the_setting() -> None:
    with pytest.raises(TechniqueNotUsable, match="setting 'block': it cannot be worked: The kit has no series above"):
        check(replace(CROWN_DOWN, series_sizes_up=20))


def test_every_instrument_that_shapes_is_followed_by_irrigation_and_the_small_instrument() -> None:
    """On the order of work that is written, not on the rules: whatever phases there are, all of them write it."""
    for each in provided_techniques().values():
        (sheet,) = (canal.run_sheet for canal in plan(molar(technique=each)).canals if canal.canal == "P")
        cutting = [node for node in sheet.nodes.values() if isinstance(node, Step) and node.action is Action.INSTRUMENT]
        assert cutting
        for node in cutting:
            after = [sheet.nodes[to] for to in node.exits.values()]
            assert {step.action for step in after if isinstance(step, Step)} == {Action.IRRIGATE}, node.id
            # Where the small instrument itself is held there is nothing to recapitulate with.
            if (node.instrument or "").startswith(("08/", "10/")) or node.phase == "explore":
                continue
            again = [sheet.nodes[to] for rinse in after if isinstance(rinse, Step) for to in rinse.exits.values()]
            assert {small.action for small in again if isinstance(small, Step)} == {Action.RECAPITULATE}, node.id


def test_a_programme_copies_and_changes_a_technique() -> None:
    mine = read_technique(TEXT.replace("most_passes = 3", "most_passes = 4"), where="mine.toml")
    descend = next(p for p in mine.phases if p.kind is PhaseKind.DESCEND)
    assert descend.most_passes == 4
    assert plan(molar(technique=mine)).technique == "Crown-down"
