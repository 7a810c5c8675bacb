"""Choices in the API's description: each under a name of its own, described once, wherever it stands."""

from __future__ import annotations

from typing import Any

# By the values, in their order: the name, and what is chosen. Those that are an enum in the code bring both along.
NAMES = {
    "A B": ("ReferenceSet", "Which of two published sets of lengths the figures are from."),
    "GEOMETRY FIDUCIAL other": ("CalibrationType", "DICOM's Pixel Spacing Calibration Type (0028,0A02)."),
    "active paused": ("WebhookSwitch", "Whether messages are sent, or wait."),
    "apex constriction": ("LocatorMark", "The mark on the apex locator's scale that was read at."),
    "approved returned": ("SignOffExit", "What a supervisor says at a hold point."),
    "as_expected shorter longer": ("Against", "A depth that was felt, against what was expected."),
    "buccal lingual cannot_tell": ("Side", "Towards the cheek, towards the tongue, or not told by these views."),
    "cone plugger spreader": ("FillingKind", "What the canal is filled with or by."),
    "cone_mark two_instruments image_estimate": ("JunctionMethod", "How the place where two canals meet was found."),
    "fiducial geometry": ("Calibration", "What the image file says that its pixel spacing was corrected by."),
    "finished plan_again": ("Outcome", "What the walk through a canal's run sheet comes to."),
    "instrument ruler ball": ("KnownObjectKind", "An instrument, its stop to its tip; a ruler; a ball, across."),
    "instrument_separated perforation_suspected hypochlorite_accident sudden_bleeding sudden_pain_or_swelling "
    "inhaled_or_swallowed collapse splash_in_eye splash_on_skin sharps_injury": ("Emergency", "What stopped the work."),
    "least most tells": ("ReasonBound", "Whether a reason for a size is a least, a most, or only tells something."),
    "length junction image": ("StruckKind", "A length, a junction or an image that was struck."),
    "low medium high": ("StrainClass", "How much a bend strains an instrument that turns in it."),
    "low moderate high": ("Level", "How difficult it is."),
    "mesial distal": ("Way", "Towards the middle of the arch, or away from it."),
    "no_sensor film image_elsewhere": ("NoImage", "Why there is no image."),
    "none calcium_hydroxide other": ("Dressing", "What was left in the canals until the next visit."),
    "none zinc_oxide glass_ionomer other": ("Temporary", "What closed the tooth until the next visit."),
    "on off leaking": ("Dam", "How the rubber dam is."),
    "open side_vented": ("NeedleTip", "Where the needle's opening is."),
    "patient diagnosis tooth additional": ("FactorGroup", "What a factor of difficulty belongs to."),
    "pre_operative length final_size cone final other": ("ImagePurpose", "What an image was taken for."),
    "sensitivity normal_bleeding ledge_suspected not_sure other": ("PauseCause", "Why the work rests for a while."),
    "stop_moved reference_changed tip_bleeding tip_wet not_known": ("PastStopCause", "Why an instrument went deeper."),
    "three_points tangents one_arc": ("ArcConstruction", "How the arc was drawn through the points."),
    "whole discarded": ("Inspection", "What an instrument was found to be when it was looked at."),
    "wrong_canal not_so": ("ImageStruckWhy", "Why an image was struck."),
}


def named(result: dict[str, Any], **_: object) -> dict[str, Any]:
    """The generator's hook: puts choices that stand within schemas beside these, and refers to them.

    Raises TypeError for choices without a name.
    """
    schemas = result["components"]["schemas"]
    beside: dict[str, Any] = {}
    for schema in schemas.values():
        for part in schema.values():
            _refer(part, beside)
    if taken := {name for name in beside.keys() & schemas.keys() if schemas[name].get("enum") != beside[name]["enum"]}:
        raise TypeError(f"Choices and something else are both named {sorted(taken)}.")
    schemas.update(beside)
    result["components"]["schemas"] = dict(sorted(schemas.items()))
    return result


def _refer(part: Any, beside: dict[str, Any]) -> None:
    """Moves every choice that lies within a part of a schema."""
    if isinstance(part, list):
        for each in part:
            _refer(each, beside)
    elif isinstance(part, dict):
        if isinstance(part.get("enum"), list):
            _move(part, beside)
        for key, each in part.items():
            if key not in {"default", "example", "examples"}:
                _refer(each, beside)


def _move(part: dict[str, Any], beside: dict[str, Any]) -> None:
    choices = [choice for choice in part.pop("enum") if choice is not None]
    may_be_null = "null" in part.pop("type", "string")
    words = " ".join(choices)
    if words not in NAMES:
        raise TypeError(f"The choices {words!r} have no name in the API's description.")
    name, says = NAMES[words]
    beside[name] = {"type": "string", "enum": choices, "description": says}
    reference = {"$ref": f"#/components/schemas/{name}"}
    if may_be_null:
        part["anyOf"] = [reference, {"type": "null"}]
    else:
        # Beside a reference other keys count too, but not every reader of descriptions knows.
        part.update({"allOf": [reference]} if part else reference)
