"""The advised final size. Student range: floor, the canal's own end, its first binder and the more cautious published
range, less a curve's cap and a thin wall's."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.anatomy import all_teeth
from planning.anatomy.walls import ThinWall
from planning.canal.apical_size import ApicalEnd, SizeRequest, WallAbove, advise
from planning.contract.plan_value import SizeRange, SizeReason
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import sizes
from planning.techniques.technique import Setting

PERMANENT = [tooth.iso for tooth in all_teeth() if not tooth.primary]


def asked(iso: str, canal: str, setting: Setting = Setting.EXTRACTED, **more: Any) -> SizeRequest:
    fields: dict[str, Any] = {"tooth_iso": iso, "canal": canal, "setting": setting, "taper": 4}
    return SizeRequest(**(fields | more))


def advised_for(iso: str, canal: str, setting: Setting = Setting.EXTRACTED, **more: Any) -> SizeRange:
    return advise(asked(iso, canal, setting, **more), Figures())


def bounds(iso: str, canal: str, setting: Setting = Setting.EXTRACTED, deg: float | None = None) -> tuple[int, int]:
    advised = advised_for(iso, canal, setting, curvature_deg=deg)
    assert advised.proposed == (advised.least if advised.least <= advised.most else None)
    return advised.least, advised.most


@pytest.mark.parametrize(
    ("iso", "canal", "least", "most"),
    [
        # Worked by hand: floor 30; foramina of Wolf et al. 2017, table 5, and the first size wider than their narrow
        # side; both bounds of Glickman & Dumsha 1997. 36 D is 0.30 mm narrow, which a 30 does not touch.
        ("26", "P", 35, 50),
        ("26", "MB1", 30, 40),
        ("16", "MB2", 30, 40),
        ("36", "ML", 30, 40),
        ("36", "D", 35, 50),
        ("47", "D", 35, 50),
        ("14", "B", 30, 40),
        ("21", "single", 35, 60),
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


def test_a_canal_that_asks_for_more_than_it_bears_is_wide_and_has_no_size_proposed() -> None:
    """26 P: 0.33 mm narrow asks for 35, a curve of 33 degrees caps at 30."""
    advised = advised_for("26", "P", Setting.CLINIC, curvature_deg=33.0)
    assert (advised.least, advised.most, advised.proposed) == (35, 30, None)
    assert "supervisor chooses" in reasons_of(advised)["wide-canal"].says
    assert "wide-canal" not in reasons_of(advised_for("26", "P", Setting.CLINIC))


def test_the_wider_school_is_told_and_not_proposed() -> None:
    reasons = " ".join(reason.says for reason in advised_for("26", "P").reasons)
    assert "80 to 100 (Tronstad" in reasons
    assert "Glickman & Dumsha" in reasons
    assert "0.33 mm" in reasons


def test_a_block_is_three_sizes_above_its_own_end() -> None:
    """First to bind plus three (Grossman; Weine) from a block of size 15: 20, 25, 30."""
    assert bounds("26", "P", Setting.BLOCK) == (30, 40)
    assert bounds("26", "P", Setting.BLOCK, 35.0) == (30, 30)


def test_a_canal_nobody_published_a_range_for_says_so() -> None:
    advised = advised_for("18", "MB1", Setting.CLINIC)
    assert (advised.least, advised.most) == (30, 40)
    assert any("no range is published" in reason.says for reason in advised.reasons)


def test_a_programme_sets_its_own_floor_and_it_is_on_record() -> None:
    figures = Figures({"final.floor": 35})
    assert advise(asked("36", "ML"), figures).least == 35
    assert [figure.key for figure in figures.used() if figure.programme] == ["final.floor"]


@given(
    st.sampled_from(PERMANENT),
    st.sampled_from(["single", "MB1", "MB2", "MB", "ML", "D", "DB", "P", "B", "L", "X"]),
    st.sampled_from(Setting),
    st.none() | st.floats(0, 90),
    st.none() | st.sampled_from(sizes()),
)
def test_the_range_is_a_range_of_the_series(
    iso: str, canal: str, setting: Setting, deg: float | None, first_binder: int | None
) -> None:
    figures = Figures()
    advised = advise(asked(iso, canal, setting, curvature_deg=deg, first_binder=first_binder), figures)
    lower = [reason.size or 0 for reason in advised.reasons if reason.bound == "least"]
    upper = [reason.size or 0 for reason in advised.reasons if reason.bound == "most"]
    assert (advised.least, advised.most) == (max(lower), min(upper))
    assert {reason.row for reason in advised.reasons} <= {figure.key for figure in figures.used()}
    assert advised.proposed == (advised.least if advised.least <= advised.most else None)
    assert {advised.least, advised.most} <= set(sizes())
    assert all(reason.says and reason.source and reason.know for reason in advised.reasons)


def reasons_of(advised: SizeRange) -> dict[str, SizeReason]:
    return {reason.code: reason for reason in advised.reasons}


def test_every_reason_stands_alone_with_its_row() -> None:
    """26 P by hand: floor and irrigant 30; foramen 0.33 mm wide: 35; published 25-50 and 80-100; 0.42 mm across: 45."""
    reasons = reasons_of(advised_for("26", "P"))
    assert {code: (reason.bound, reason.size) for code, reason in reasons.items()} == {
        "floor": ("least", 30),
        "irrigation-floor": ("least", 30),
        "narrow-end": ("least", 35),
        "published-lower": ("least", 25),
        "published-upper": ("most", 50),
        "published-wider": ("tells", 100),
        "wall-contact": ("tells", 45),
    }
    assert reasons["narrow-end"].row == "foramina/16/P/narrow_mm"
    assert reasons["narrow-end"].know == "read"
    assert reasons["published-wider"].know == "from memory"


@pytest.mark.parametrize(
    ("first_binder", "loose", "least", "three_more"),
    [(15, None, 30, 30), (25, 20, 30, 40), (30, 20, 35, 45), (60, 20, 70, 90), (20, 20, 30, None), (15, 20, 30, None)],
)
def test_one_size_above_the_first_to_bind(
    first_binder: int, loose: int | None, least: int, three_more: int | None
) -> None:
    """The series by ISO 3630-1: 30 -> 35, 60 -> 70; the old rule of Grossman and Weine, three more, is told. A size
    that was loose before cannot be the first to bind."""
    advised = advised_for("36", "ML", first_binder=first_binder, loose=loose)
    assert advised.least == least
    reasons = reasons_of(advised)
    assert (reasons["first-binder-three"].size if "first-binder-three" in reasons else None) == three_more
    assert ("first-binder-loose" in reasons) == (loose is not None and first_binder <= loose)


def test_measured_widths_stand_in_place_of_the_published_foramen() -> None:
    advised = advised_for("36", "ML", end=ApicalEnd(narrow_mm=0.41, wide_mm=0.41))
    assert reasons_of(advised)["narrow-end"].size == 45
    assert (advised.least, advised.most, advised.proposed) == (45, 40, None)  # the published upper bound stands


@pytest.mark.parametrize(
    ("narrow_mm", "size"), [(0.299, 30), (0.3, 35), (0.35, 40), (0.351, 40), (1.4, 140), (9.0, 140)]
)
def test_the_first_size_that_cuts_is_wider_than_the_canal(narrow_mm: float, size: int) -> None:
    """ISO 3630-1: a 35 is 0.35 mm at its tip and touches nothing of a canal as wide."""
    advised = advised_for("43", "single", end=ApicalEnd(narrow_mm=narrow_mm, wide_mm=narrow_mm))
    assert reasons_of(advised)["narrow-end"].size == size


def wall(thickness_mm: float, from_end_mm: float = 10.0, canal_mm: float = 0.40) -> WallAbove:
    thin = ThinWall(thickness_mm=thickness_mm, at_mm=10.5, measured=True, source="measured", know="read", rows=())
    return WallAbove(wall=thin, canal_mm=canal_mm, from_end_mm=from_end_mm)


def test_the_thinnest_wall_caps_the_range() -> None:
    """By hand, 10 mm from the end at taper .04, canal 0.40, wall 0.70: size 40 is 0.80 wide there and leaves at worst
    0.70 - 0.40 = 0.30, which is enough; 45 would leave 0.25."""
    advised = advised_for("36", "D", wall=wall(0.70))
    assert (advised.least, advised.most) == (35, 40)
    assert reasons_of(advised)["wall-ceiling"].size == 40


def test_where_not_even_the_least_size_leaves_wall_the_taper_is_to_blame() -> None:
    """30/.06 is 0.90 wide there: 0.79 - 0.50 = 0.29, below 0.3."""
    advised = advised_for("36", "ML", taper=6, wall=wall(0.79))
    assert (advised.least, advised.most) == (30, 40)
    assert "smaller taper" in reasons_of(advised)["wall-thin"].says


def test_a_taper_too_steep_for_the_curve_is_told() -> None:
    assert "curvature-taper" in reasons_of(advised_for("36", "ML", taper=6, curvature_deg=28.0))
    assert "curvature-taper" not in reasons_of(advised_for("36", "ML", taper=4, curvature_deg=28.0))
