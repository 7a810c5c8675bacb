"""What every plan brings along for the chair."""

from __future__ import annotations

from dataclasses import replace

import pytest

from planning import plan
from planning.contract.chairside import Guidance, at_the_chair
from planning.foundation.tables import Figures
from planning.techniques.technique import Setting
from tests.planning.given import molar


def test_edta_stays_for_about_a_minute_and_never_over_ten() -> None:
    """Lecture notes on final rinses: about 1 minute; Calt & Serper 2002 (from memory): 10 minutes erode dentine."""
    (edta,) = at_the_chair(Figures()).contacts
    assert (edta.irrigant, edta.about_s, edta.most_s) == ("edta", 60, 600)
    assert all(row.source for row in edta.rows)


def test_a_programme_sets_its_own_time() -> None:
    (edta,) = at_the_chair(Figures({"rinse.edta_about_min": 1.5})).contacts
    assert (edta.about_s, edta.most_s) == (90, 600)


@pytest.mark.parametrize("about", Guidance)
def test_every_sentence_says_where_it_is_from(about: Guidance) -> None:
    advice = [entry for entry in at_the_chair(Figures()).advice if entry.about is about]
    assert advice
    assert all(entry.says and entry.source and entry.know for entry in advice)


def test_a_plan_brings_it_along_and_its_numbers_do_not_rest_on_it() -> None:
    made = plan(molar())
    assert made.at_the_chair == at_the_chair(Figures())
    assert not any(row.key.startswith("rinse.edta") for row in made.rows_used)


def test_an_engine_instrument_without_speed_or_torque_is_told_apart() -> None:
    stated, plan_input = molar(), molar()
    silent = tuple(replace(instrument, speed_rpm=None) for instrument in plan_input.kit.instruments)
    plan_input = replace(plan_input, kit=replace(plan_input.kit, instruments=silent))
    assert {(item.instrument.motion, item.instrument.setting_stated) for item in plan(plan_input).tray_list} == {
        ("hand", True),
        ("continuous", False),
    }
    assert all(item.instrument.setting_stated for item in plan(stated).tray_list)


@pytest.mark.parametrize("setting", Setting)
def test_nothing_happens_to_a_patient_who_is_not_there(setting: Setting) -> None:
    """By hand, common practice: what takes a patient, and what can happen to a block or an extracted tooth as well."""
    with_a_patient = {
        (Guidance.EMERGENCY, "hypochlorite_accident"),
        (Guidance.EMERGENCY, "sudden_bleeding"),
        (Guidance.EMERGENCY, "sudden_pain_or_swelling"),
        (Guidance.EMERGENCY, "inhaled_or_swallowed"),
        (Guidance.EMERGENCY, "collapse"),
        (Guidance.PAUSE, "sensitivity"),
        (Guidance.PAUSE, "normal_bleeding"),
    }
    anywhere = {
        (Guidance.EMERGENCY, "instrument_separated"),
        (Guidance.EMERGENCY, "perforation_suspected"),
        (Guidance.EMERGENCY, "splash_in_eye"),
        (Guidance.EMERGENCY, "splash_on_skin"),
        (Guidance.EMERGENCY, "sharps_injury"),
        (Guidance.PAUSE, "ledge_suspected"),
        (Guidance.PAUSE, "not_sure"),
        (Guidance.PAUSE, "other"),
    }
    advice = [entry for entry in at_the_chair(Figures()).advice if entry.about in (Guidance.EMERGENCY, Guidance.PAUSE)]
    here = {(entry.about, entry.key) for entry in advice if not entry.settings or setting in entry.settings}
    assert here == anywhere | (with_a_patient if setting is Setting.CLINIC else set())
    assert setting is Setting.CLINIC or not any(
        "patient" in entry.says.lower() for entry in advice if not entry.settings
    )
