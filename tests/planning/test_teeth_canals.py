"""What a new case starts from and what it tells to look for. Sources are named with each figure."""

from __future__ import annotations

import pytest

from planning.anatomy import CanalOnOffer, Tooth, all_teeth, tooth, usual_range
from planning.foundation import tables
from planning.instruments.iso_3630 import sizes

USUAL = {
    "11": ["single"],
    "12": ["single"],
    "13": ["single"],
    "14": ["B", "P"],
    "15": ["single"],
    "16": ["MB1", "MB2", "DB", "P"],
    "17": ["MB1", "DB", "P"],
    "18": [],
    "31": ["single"],
    "32": ["single"],
    "33": ["single"],
    "34": ["single"],
    "35": ["single"],
    "36": ["MB", "ML", "D"],
    "37": ["MB", "ML", "D"],
    "38": [],
}
OTHER_SIDE = {"1": "2", "3": "4"}


def offered(of: Tooth, name: str) -> CanalOnOffer:
    return next(canal for canal in (*of.canals, *of.look_for) if canal.name == name)


@pytest.mark.parametrize("iso", USUAL)
def test_usual_canals_are_alike_on_both_sides(iso: str) -> None:
    for side in (iso, OTHER_SIDE[iso[0]] + iso[1]):
        assert [canal.name for canal in tooth(side).canals] == USUAL[iso]
    assert tooth(iso).lengths == tooth(OTHER_SIDE[iso[0]] + iso[1]).lengths


def test_the_molar_of_the_four_canals() -> None:
    points = {canal.name: canal.reference_point for canal in tooth("26").canals}
    assert points == {"MB1": "MB cusp", "MB2": "MB cusp", "DB": "DB cusp", "P": "palatal cusp"}
    assert {canal.name: canal.root for canal in tooth("26").canals}["MB2"] == "MB"


@pytest.mark.parametrize("iso", ["36", "37", "46", "47"])
def test_a_distal_canal_has_its_reference_point_chosen_by_a_person(iso: str) -> None:
    distal = offered(tooth(iso), "D")
    assert distal.reference_point is None
    assert "DB cusp" in distal.other_reference_points


@pytest.mark.parametrize(
    ("iso", "canal", "share", "low", "high"),
    [
        ("26", "MB2", 0.696, 0.645, 0.748),  # meta-analysis of CBCT studies, 15,285 teeth
        ("17", "MB2", 0.390, 0.311, 0.469),  # the same, 8,641 teeth
        ("41", "lingual", 0.204, 0.150, 0.257),  # meta-analysis of CBCT studies, 14,278 teeth
        ("33", "lingual", 0.059, 0.041, 0.077),  # the same, 12,073 teeth
        ("44", "L", 0.242, None, None),  # Cleghorn et al., J Endod 2007;33:1031
        ("46", "DL", 0.369, 0.164, 0.600),  # Martins et al., J Endod 2022;48:223
        ("36", "radix", 0.056, 0.009, 0.224),  # the same
        ("36", "MM", 0.0415, 0.0269, 0.0589),  # PMID 38743355
        ("47", "C-shape", 0.139, None, 0.440),  # von Zuben et al. 2017, PMID 28734652
    ],
)
def test_prevalence_is_told_with_its_source(
    iso: str, canal: str, share: float, low: float | None, high: float | None
) -> None:
    study = offered(tooth(iso), canal).studies[0]
    assert (study.share, study.low_share, study.high_share) == (share, low, high)
    assert study.source
    assert study.says


def test_shares_are_shares() -> None:
    for row in tables.rows("prevalence"):
        low, share, high = (float(row[name]) if row[name] else None for name in ("low_share", "share", "high_share"))
        known = [value for value in (low, share, high) if value is not None]
        assert known == sorted(known)
        assert all(0 <= value <= 1 for value in known)


def test_every_row_of_prevalence_speaks_of_a_canal_on_offer() -> None:
    for row in tables.rows("prevalence"):
        if row["canal"]:
            assert offered(tooth(row["tooth"]), row["canal"]).studies


def test_what_else_to_look_for_is_never_a_usual_canal() -> None:
    for each in all_teeth():
        names = [canal.name for canal in (*each.canals, *each.look_for)]
        assert len(names) == len(set(names))
    assert [canal.name for canal in tooth("27").look_for] == ["MB2"]
    assert {canal.name for canal in tooth("46").look_for} == {"DL", "radix", "MM"}


@pytest.mark.parametrize(
    ("iso", "mean_mm", "least_mm", "greatest_mm"),
    [("21", 22.5, 18.0, 27.0), ("24", 20.6, 17.0, 22.5), ("26", 20.8, 17.0, 24.0), ("43", 25.6, 20.0, 32.5)],
)
def test_the_range_that_entries_are_tested_against(
    iso: str, mean_mm: float, least_mm: float, greatest_mm: float
) -> None:
    """Black, Descriptive Anatomy of the Human Teeth, 1902: average, least, greatest."""
    usual = usual_range(tooth(iso))
    assert usual is not None
    assert (usual.mean_mm, usual.low_mm, usual.high_mm) == (mean_mm, least_mm, greatest_mm)


def test_reference_sets_stay_apart() -> None:
    molar = tooth("26").lengths
    assert [(length.reference_set, length.root, length.mean_mm) for length in molar] == [
        ("A", None, 20.8),
        ("B", "MB", 19.9),
        ("B", "DB", 19.4),
        ("B", "P", 20.6),
    ]
    assert molar[-1].low_mm is None  # the lower end is not known, so it is not made up


def test_every_permanent_tooth_has_a_range_and_a_crown() -> None:
    for each in all_teeth():
        usual = usual_range(each)
        assert (usual is None) is each.primary
        assert (each.crown_mm is None) is each.primary
        if usual is not None and usual.low_mm is not None and usual.high_mm is not None:
            assert usual.low_mm < usual.mean_mm < usual.high_mm
            assert each.crown_mm is not None
            assert each.crown_mm < usual.low_mm


def test_the_main_canal_is_proposed_with_its_reason_and_only_where_there_is_one() -> None:
    assert [(main.root, main.canal) for main in tooth("26").main_canals] == [("MB", "MB1")]
    assert [(main.root, main.canal) for main in tooth("46").main_canals] == [("M", "ML")]
    assert all(main.reason and main.source for main in tooth("46").main_canals)
    assert tooth("14").main_canals == ()


def test_primary_teeth_have_names_and_nothing_to_plan_with() -> None:
    milk = tooth("75")
    assert (milk.canals, milk.look_for, milk.lengths, milk.main_canals) == ((), (), (), ())


def test_published_sizes_are_of_the_series() -> None:
    for row in tables.rows("final_sizes"):
        assert int(row["least_size"]) < int(row["most_size"])
        assert {int(row["least_size"]), int(row["most_size"])} <= set(sizes())


@pytest.mark.parametrize("iso", [iso for iso in USUAL if USUAL[iso]])
def test_every_usual_canal_has_its_range_in_both_schools(iso: str) -> None:
    rows = [row for row in tables.rows("final_sizes") if row["tooth"] == iso]
    for canal in tooth(iso).canals:
        assert len([row for row in rows if canal.name in row["canals"].split()]) == 2
