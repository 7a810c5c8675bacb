"""What an image's pixels are worth: the standard's own rules, geometry by hand, and what no detector can be."""

from __future__ import annotations

import math

import pytest

from planning.foundation.errors import ScaleNotUsable
from planning.foundation.tables import Figures
from planning.radiograph import scale_of
from planning.radiograph.values import (
    Calibration,
    KnownObject,
    KnownWhat,
    Pixel,
    PixelSpacing,
    Scale,
    ScaleState,
    SpacingFacts,
)

FINE, COARSE = PixelSpacing(row_mm=0.03, column_mm=0.03), PixelSpacing(row_mm=0.032, column_mm=0.032)


def scale_from(
    in_patient: PixelSpacing | None = None,
    at_detector: PixelSpacing | None = None,
    scanned: PixelSpacing | None = None,
    calibration: Calibration | None = None,
    magnification: float | None = None,
) -> Scale:
    facts = SpacingFacts(
        in_patient=in_patient,
        at_detector=at_detector,
        scanned=scanned,
        calibration=calibration,
        magnification=magnification,
    )
    return scale_of(facts, None, 1.0, Figures())


def marked(
    what: KnownWhat = "instrument", length_mm: float = 18, long_px: float = 600, in_patient: PixelSpacing | None = None
) -> Scale:
    known = KnownObject(
        what=what, length_mm=length_mm, points=(Pixel(x_px=100, y_px=50), Pixel(x_px=100, y_px=50 + long_px))
    )
    return scale_of(SpacingFacts(in_patient=in_patient), known, 1.0, Figures())


# DICOM PS3.3, as summarised in the project's ladder: what Pixel Spacing is worth hangs on its calibration type.
@pytest.mark.parametrize(
    ("scale", "state", "rests_on"),
    [
        (scale_from(FINE, COARSE, calibration="fiducial"), ScaleState.CALIBRATED, "fiducial"),
        (scale_from(FINE, COARSE, calibration="geometry"), ScaleState.ESTIMATED, "geometry"),
        (scale_from(at_detector=COARSE, magnification=1.06), ScaleState.ESTIMATED, "magnification"),
        (scale_from(FINE, COARSE), ScaleState.UNCALIBRATED, "unknown_correction"),
        (scale_from(COARSE, COARSE), ScaleState.AT_DETECTOR, "detector"),
        (scale_from(at_detector=COARSE), ScaleState.AT_DETECTOR, "detector"),
        (scale_from(scanned=COARSE), ScaleState.AT_DETECTOR, "film"),
        (scale_from(FINE), ScaleState.UNCALIBRATED, "unknown_spacing"),
        (scale_from(), ScaleState.UNCALIBRATED, "nothing"),
        (marked("ruler"), ScaleState.CALIBRATED, "ruler"),
        (marked("ball", 5, 170, in_patient=FINE), ScaleState.CALIBRATED, "ball"),
    ],
)
def test_the_ladder(scale: Scale, state: ScaleState, rests_on: str) -> None:
    assert (scale.state, scale.rests_on) == (state, rests_on)
    assert (scale.row_mm is None) == (scale.spread_share is None) == (state is ScaleState.UNCALIBRATED)
    assert scale.says
    assert bool(scale.do) == (state is not ScaleState.CALIBRATED)


def test_the_magnification_is_taken_out() -> None:
    """Source to detector over source to object (DICOM): 400 mm with the object 15 mm before the detector is 1.039, so a
    tooth of 25 mm is 25.97 mm on the detector and 25 again once it is taken out."""
    magnification = 400 / (400 - 15)
    scale = scale_from(at_detector=FINE, magnification=magnification)
    columns = 25 * magnification / 0.03
    assert columns * 0.03 == pytest.approx(25.97, abs=0.005)
    assert columns * (scale.column_mm or 0) == pytest.approx(25, abs=1e-3)


def test_an_object_of_known_length_by_hand() -> None:
    """18 mm over 600 px: 0.03 mm a pixel. Spread: both ends a pixel off, root 2 / 600, and the stop's 0.15 / 18."""
    scale = marked()
    assert scale.column_mm == scale.row_mm == 0.03
    assert scale.spread_share == pytest.approx(math.hypot(math.sqrt(2) / 600, 0.15 / 18))


def test_pixels_that_are_no_squares_stay_so_under_a_known_object() -> None:
    """Rows 0.05 and columns 0.025 apart: an object across the image and one down it give the same pixel."""
    wide = PixelSpacing(row_mm=0.05, column_mm=0.025)
    down = marked(length_mm=20, long_px=400, in_patient=wide)
    flat = KnownObject(what="ruler", length_mm=20, points=(Pixel(x_px=0, y_px=9), Pixel(x_px=800, y_px=9)))
    across = scale_of(SpacingFacts(in_patient=wide), flat, 1.0, Figures())
    assert (down.row_mm, down.column_mm) == (across.row_mm, across.column_mm) == (0.05, 0.025)


@pytest.mark.parametrize("wrong", [0.0, -0.03, 1e-9, 33.3])
@pytest.mark.parametrize("where", ["in_patient", "at_detector", "scanned"])
def test_a_spacing_that_cannot_be_is_refused(wrong: float, where: str) -> None:
    """Zero stands in real files; a 33.3 mm pixel in a published test image."""
    for spacing in (PixelSpacing(row_mm=wrong, column_mm=0.03), PixelSpacing(row_mm=0.03, column_mm=wrong)):
        with pytest.raises(ScaleNotUsable) as refused:
            scale_from(**{where: spacing})  # type: ignore[arg-type]
        assert refused.value.pointer == ("facts", where)


def test_a_known_object_goes_before_a_spacing_that_cannot_be() -> None:
    assert marked(in_patient=PixelSpacing(row_mm=0, column_mm=0)).column_mm == 0.03


@pytest.mark.parametrize(
    ("length_mm", "long_px", "pointer"),
    [
        (18, 10, ("known", "points")),
        (18, 0, ("known", "points")),
        (0, 600, ("known", "length_mm")),
        (-18, 600, ("known", "length_mm")),
        (180, 600, ("known", "length_mm")),
        (1, 600, ("known", "length_mm")),
    ],
)
def test_an_object_that_cannot_measure_is_refused(length_mm: float, long_px: float, pointer: tuple[str, ...]) -> None:
    with pytest.raises(ScaleNotUsable) as refused:
        marked(length_mm=length_mm, long_px=long_px)
    assert refused.value.pointer == pointer


@pytest.mark.parametrize("magnification", [0.9, 0, -1, 1.5])
def test_a_magnification_that_cannot_be_is_refused(magnification: float) -> None:
    with pytest.raises(ScaleNotUsable):
        scale_from(at_detector=FINE, magnification=magnification)
