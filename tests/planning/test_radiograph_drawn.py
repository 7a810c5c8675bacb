"""Drawn radiographs of known lengths and bends, marked a pixel off, measured through a file and back."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pydicom
import pytest

from planning.foundation.tables import Figures
from planning.radiograph import ImageMarks, measure
from planning.radiograph.values import CanalLine, KnownObject, Pixel, PixelSpacing, SpacingFacts
from tests.dicom_checker import judged
from tests.draws import draws
from tests.radiographs import Places, Radiograph, Root, drawn

ROOTS = [
    Root(canal="ML", begins=(6, 3), straight_mm=13, radius_mm=9, bend_deg=40, instrument_mm=18),
    Root(canal="MB", begins=(9, 3), straight_mm=12, radius_mm=5, bend_deg=-70, instrument_mm=16),
    Root(canal="D", begins=(5, 3), straight_mm=15, radius_mm=20, bend_deg=16, instrument_mm=19),
]
PIXELS = [(0.03, 0.03), (0.04, 0.025), (0.02, 0.02)]


def tapped(image: Radiograph, places_mm: Places, seed: int) -> tuple[Pixel, ...]:
    """Marks one pixel off along each axis."""
    off = np.random.default_rng(seed).normal(0, 1, places_mm.shape)
    return tuple(Pixel(x_px=x, y_px=y) for x, y in image.on_image(places_mm) + off)


def marked(image: Radiograph, root: Root, seed: int) -> CanalLine:
    straight, end = root.straight_mm, root.length_mm
    along = np.array([0, straight / 2, straight, *np.linspace(straight, end, 5)[1:]])
    return CanalLine(canal=root.canal, points=tapped(image, root.along(along), seed), leaves=2)


def instrument(image: Radiograph, root: Root, seed: int) -> KnownObject:
    assert root.instrument_mm is not None
    along = root.along(np.linspace(0, root.instrument_mm, 6))
    return KnownObject(what="instrument", length_mm=root.instrument_mm, points=tapped(image, along, seed + 1000))


@pytest.mark.parametrize("root", ROOTS, ids=lambda root: root.canal)
@pytest.mark.parametrize("pixels", PIXELS)
def test_length_and_bend_of_a_drawn_canal(root: Root, pixels: tuple[float, float]) -> None:
    """Through 50 sets of marks: length within 0.3 mm, Schneider's angle, half the arc's, within 3 degrees."""
    image = drawn(root, row_mm=pixels[0], column_mm=pixels[1])
    facts = SpacingFacts(at_detector=PixelSpacing(row_mm=image.row_mm, column_mm=image.column_mm))
    for seed in range(draws(50)):
        known, line = instrument(image, root, seed), marked(image, root, seed)
        line_measured = measure(ImageMarks(lines=(line,), known=known, facts=facts), Figures()).lines[0]
        assert line_measured.length_mm is not None
        assert line_measured.bend is not None
        assert line_measured.length_mm.value == pytest.approx(root.length_mm, abs=0.3)
        assert line_measured.bend.schneider_deg.value == pytest.approx(abs(root.bend_deg) / 2, abs=3)


def test_the_instrument_that_is_drawn_is_seen() -> None:
    """The picture is what the truth says: bright along the instrument, dark along the canal beyond it."""
    image = drawn(ROOTS[0], noise=0)

    def grey(mm: float) -> float:
        x, y = image.on_image(ROOTS[0].along(np.array([mm])))[0]
        return float(image.grey[round(y), round(x)])

    assert min(grey(10), grey(17)) > 180
    assert grey(18.6) < 130


def test_through_an_intra_oral_dicom_file(tmp_path: Path) -> None:
    """Spacing at the detector and magnification, read back by pydicom: the tooth's own length comes out."""
    root = ROOTS[0]
    image = drawn(root, magnification=1.06)
    dataset = pydicom.dcmread(image.dicom(tmp_path / "drawn.dcm"))
    row_mm, column_mm = (float(value) for value in dataset.ImagerPixelSpacing)
    facts = SpacingFacts(
        at_detector=PixelSpacing(row_mm=row_mm, column_mm=column_mm),
        magnification=float(dataset.EstimatedRadiographicMagnificationFactor),
    )
    measured = measure(ImageMarks(lines=(marked(image, root, 3),), facts=facts), Figures())
    assert measured.scale.rests_on == "magnification"
    assert measured.lines[0].length_mm is not None
    assert measured.lines[0].length_mm.value == pytest.approx(root.length_mm, abs=0.3)
    assert (dataset.pixel_array == image.grey).all()


def test_an_outside_checker_takes_the_drawn_file(tmp_path: Path) -> None:
    """The kind of image recognised, no error."""
    path = drawn(*ROOTS[:1]).dicom(tmp_path / "drawn.dcm")
    assert judged(path) == ("IntraoralImageForPresentation", [])
