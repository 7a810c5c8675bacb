"""The advised final size. Student range: floor or narrow foramen, the lower published upper bound, a curve's cap."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.apical_size import advise
from planning.instruments import sizes
from planning.tables import Figures
from planning.techniques import Setting
from planning.teeth import all_teeth

PERMANENT = [tooth.iso for tooth in all_teeth() if not tooth.primary]


def bounds(iso: str, canal: str, setting: Setting = Setting.EXTRACTED, deg: float | None = None) -> tuple[int, int]:
    advised = advise(iso, canal, setting, deg, Figures())
    assert advised.proposed == advised.least
    return advised.least, advised.most


@pytest.mark.parametrize(
    ("iso", "canal", "least", "most"),
    [
        # Worked by hand: floor 30; foramina of Wolf et al. 2017, table 5; upper bound of Glickman & Dumsha 1997.
        ("26", "P", 35, 50),
        ("26", "MB1", 30, 40),
        ("16", "MB2", 30, 40),
        ("36", "ML", 30, 40),
        ("36", "D", 30, 50),
        ("47", "D", 35, 50),
        ("14", "B", 30, 40),
        ("21", "single", 30, 60),
        ("45", "single", 30, 50),
    ],
)
def test_the_range_of_a_straight_canal(iso: str, canal: str, least: int, most: int) -> None:
    assert bounds(iso, canal) == (least, most)


@pytest.mark.parametrize(
    ("deg", "least", "most"),
    [(24.9, 30, 40), (25.0, 30, 35), (30.0, 30, 35), (30.1, 30, 30), (32.0, 30, 30)],
)
def test_a_curve_caps_the_range(deg: float, least: int, most: int) -> None:
    """35 from 25 to 30 degrees, 30 above."""
    assert bounds("36", "ML", Setting.CLINIC, deg) == (least, most)


def test_a_cap_below_the_foramen_wins_and_says_so() -> None:
    advised = advise("26", "P", Setting.CLINIC, 33.0, Figures())
    assert (advised.least, advised.most, advised.proposed) == (30, 30, 30)
    assert any("your supervisor decides" in reason.says for reason in advised.reasons)


def test_the_wider_school_is_told_and_not_proposed() -> None:
    reasons = " ".join(reason.says for reason in advise("26", "P", Setting.EXTRACTED, None, Figures()).reasons)
    assert "80 to 100 (Tronstad" in reasons
    assert "Glickman & Dumsha" in reasons
    assert "0.33 mm" in reasons


def test_a_block_is_three_sizes_above_its_own_end() -> None:
    """First to bind plus three (Grossman; Weine) from a block of size 15: 20, 25, 30."""
    assert bounds("26", "P", Setting.BLOCK) == (30, 40)
    assert bounds("26", "P", Setting.BLOCK, 35.0) == (30, 30)


def test_a_canal_nobody_published_a_range_for_says_so() -> None:
    advised = advise("18", "MB1", Setting.CLINIC, None, Figures())
    assert (advised.least, advised.most) == (30, 40)
    assert any("no range is published" in reason.says for reason in advised.reasons)


def test_a_programme_sets_its_own_floor_and_it_is_on_record() -> None:
    figures = Figures({"final.floor": 35})
    assert advise("36", "ML", Setting.EXTRACTED, None, figures).least == 35
    assert [figure.key for figure in figures.used() if figure.programme] == ["final.floor"]


@given(
    st.sampled_from(PERMANENT),
    st.sampled_from(["single", "MB1", "MB2", "MB", "ML", "D", "DB", "P", "B", "L", "X"]),
    st.sampled_from(Setting),
    st.none() | st.floats(0, 90),
)
def test_the_range_is_a_range_of_the_series(iso: str, canal: str, setting: Setting, deg: float | None) -> None:
    advised = advise(iso, canal, setting, deg, Figures())
    assert advised.least <= advised.most
    assert advised.least <= advised.proposed <= advised.most
    assert {advised.least, advised.most} <= set(sizes())
    assert all(reason.says and reason.source and reason.know for reason in advised.reasons)
