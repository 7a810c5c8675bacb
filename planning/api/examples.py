"""Examples of the API's description: what goes in is invented; what comes out is computed, so it is never wrong."""

from __future__ import annotations

from collections.abc import Callable
from functools import cached_property
from typing import Any

from drf_spectacular.utils import OpenApiExample

from planning.anatomy import Notation, ToothName, find
from planning.api import answers
from planning.api.requests import (
    CurvatureRequest,
    DifficultyFactors,
    InstrumentSizes,
    LengthRequest,
    MeasureRequest,
    PlanRequest,
    RunSheetRequest,
    Techniques,
    TechniqueText,
    Teeth,
    TwoViewsRequest,
)
from planning.foundation import tables
from planning.foundation.encoding import decode, encode


class Computed(OpenApiExample):
    """An answer, worked out when the description is asked for and not before."""

    def __init__(self, name: str, compute: Callable[[], object]) -> None:
        self._compute = compute
        super().__init__(name, response_only=True)

    @cached_property
    def _computed(self) -> Any:
        return encode(self._compute())

    @property
    def value(self) -> Any:
        return self._computed

    @value.setter
    def value(self, _: Any) -> None:
        """The base class sets what it was given, which is nothing."""


def _given(name: str, value: Any) -> OpenApiExample:
    return OpenApiExample(name, value=value, request_only=True)


def _hand(size: int) -> dict[str, Any]:
    return {
        "size": size,
        "taper": 2,
        "motion": "hand",
        "use": "hand",
        "length_mm": 25,
        "cutting_part_mm": 16,
    }


def _engine(size: int, taper: int, use: str, largest_flute_mm: float | None = None) -> dict[str, Any]:
    return {
        "size": size,
        "taper": taper,
        "motion": "continuous",
        "use": use,
        "length_mm": 25 if use == "shaping" else 19,
        "cutting_part_mm": 16 if use == "shaping" else 10,
        "largest_flute_mm": largest_flute_mm,
        "speed_rpm": 280,
        "torque_ncm": 1.8,
    }


# An invented kit, unlike any other of the project: hand sizes, one coronal instrument, a series of taper .05.
_KIT = {
    "name": "Example kit",
    "instruments": [
        *(_hand(size) for size in (8, 10, 15, 20, 25, 30, 35, 40)),
        _engine(30, 8, "coronal", 1.1),
        *(_engine(size, 5, "shaping") for size in (20, 25, 30, 35)),
    ],
    "needles": [{"gauge": 30, "tip": "side_vented"}],
}
_READINGS = [
    {"method": "pre_operative_image", "tooth_mm": 24.0, "reference_point": "buccal cusp"},
    {"method": "confirming_image", "set_mm": 23.0, "tip_short_mm": 0.5, "reference_point": "buccal cusp"},
]
_NAME = {"notation": "palmer", "designation": "LL4"}
_LENGTH = {
    "canal": "single",
    "reference_point": "buccal cusp",
    "setting": "extracted",
    "readings": _READINGS,
}
_PLAN = {
    "tooth": _NAME,
    "setting": "extracted",
    # The estimate alone: the order of work is short then, and the answer shows what is withheld.
    "canals": [{"name": "single", "root": "single", "reference_point": "buccal cusp", "readings": _READINGS[:1]}],
    "kit": _KIT,
    "technique": "crown-down",
    "choices": {
        "needle": {"gauge": 30, "tip": "side_vented"},
        "irrigant": "saline",
        "glide_path_to_size": 15,
        "series_taper": 5,
    },
}
_RUN_SHEET = {"canal": "single", "plan": _PLAN}

_CURVE = {
    "curve": {
        "axis": {"x_mm": 0, "y_mm": 0},
        "leaves": {"x_mm": 0, "y_mm": 10},
        "on_curve": {"x_mm": 0.6, "y_mm": 13.4},
        "end": {"x_mm": 2.3, "y_mm": 16.4},
        "other_view_deg": 12,
    }
}

_TEXT = {"name": "hand-only.toml", "text": (tables.DATA / "techniques" / "step-back.toml").read_text(encoding="utf-8")}

TECHNIQUE_TEXT = _given("The step-back technique that is provided", _TEXT)
_MARKS = {
    "marks": {
        "lines": [
            {
                "canal": "ML",
                "points": [
                    {"x_px": x_px, "y_px": y_px}
                    for x_px, y_px in ((410, 120), (412, 290), (414, 450), (433, 570), (478, 680))
                ],
                "orifice": 1,
                "leaves": 2,
                "reference_point": "ML cusp",
            }
        ],
        "known": {
            "what": "instrument",
            "length_mm": 18,
            "points": [{"x_px": 410, "y_px": 121}, {"x_px": 414, "y_px": 450}, {"x_px": 455, "y_px": 640}],
        },
    }
}
_TWO_VIEWS = {
    "views": {
        "shift": {"tube": "mesial", "first_mm": 0.2, "second_mm": 1.4},
        "bends": {"first_deg": 20, "second_deg": 12, "apart_deg": 90},
    }
}

TOOTH_NAME = _given("A tooth in Palmer notation", _NAME)
LENGTH_REQUEST = _given("An estimate and a confirming image", _LENGTH)
PLAN_REQUEST = _given("A premolar whose length is an estimate", _PLAN)
CURVATURE_REQUEST = _given("A curve tapped on an image, with its angle in a second view", _CURVE)
MEASURE_REQUEST = _given("One canal, scaled by the instrument in it", _MARKS)
TWO_VIEWS_REQUEST = _given("A line that moved with the tube, and a bend in two views", _TWO_VIEWS)
RUN_SHEET_REQUEST = _given("A canal whose length is an estimate", _RUN_SHEET)

_IN_PALMER = ToothName(notation=Notation.PALMER, designation="LL4")
TEETH = Computed("One of the teeth", lambda: Teeth(results=(find(_IN_PALMER),)))
TOOTH = Computed("The tooth", lambda: find(_IN_PALMER))
TECHNIQUES = Computed("One of the techniques", lambda: Techniques(results=answers.techniques().results[:1]))
TECHNIQUE_CHECKED = Computed("It can be used", lambda: answers.technique_check(decode(TechniqueText, _TEXT)))
DIFFICULTY_FACTORS = Computed(
    "The first two", lambda: DifficultyFactors(results=answers.difficulty_factors().results[:2])
)
INSTRUMENT_SIZES = Computed("The first three", lambda: InstrumentSizes(results=answers.instrument_sizes().results[:3]))
LENGTH = Computed("Its length", lambda: answers.length(decode(LengthRequest, _LENGTH)))
PLAN = Computed("Its plan", lambda: answers.tooth_plan(decode(PlanRequest, _PLAN)))
CURVATURE = Computed("Its angle, arcs and classes", lambda: answers.curvature(decode(CurvatureRequest, _CURVE)))
MEASURED = Computed("Its length and bend", lambda: answers.measured(decode(MeasureRequest, _MARKS)))
TWO_VIEWS = Computed("Where it lies", lambda: answers.two_views(decode(TwoViewsRequest, _TWO_VIEWS)))
RUN_SHEET = Computed("Its order of work", lambda: answers.run_sheet(decode(RunSheetRequest, _RUN_SHEET)))
