"""What was told of a visit, in plain words."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from cases.domain.progress.visit import CHECK, RENEW

_SEALED = {True: "access sealed", False: "access open"}
_LEFT = {
    "calcium_hydroxide": "calcium hydroxide",
    "zinc_oxide": "zinc oxide based",
    "glass_ionomer": "glass ionomer",
    "none": "none",
    "other": "other",
}
_DAM = {"on": "Dam on", "off": "Dam off", "leaking": "Dam leaking"}
POINTS = {CHECK: "closed visit", RENEW: "approval for this visit"}
"""What a supervisor's word on the visit is about, by its node."""


def closed(body: Mapping[str, Any]) -> list[str]:
    """What was left in the tooth, and how."""
    dressing, temporary = body.get("dressing"), body.get("temporary")
    return [
        f"dressing {_LEFT[dressing]}" if dressing else "",
        f"temporary filling {_LEFT[temporary]}" if temporary else "",
        _SEALED[bool(body.get("access_sealed"))],
        str(body.get("note") or ""),
    ]


def reopened(body: Mapping[str, Any]) -> str:
    """What was found again, and in which canals not."""
    as_left = ", ".join(body.get("as_left", ())) or "none"
    return "; ".join([f"as they were left: {as_left}", *filter(None, map(_failed, body.get("found", ())))])


def _failed(found: Mapping[str, Any]) -> str:
    """What was not as before in one canal; empty where all was."""
    if found.get("reference_point"):
        return f"{found['canal']}: measured from {found['reference_point']} now"
    short = "small instrument stays short" if found.get("small_as_deep") is False else ""
    differs = "length differs" if found.get("length_agrees") is False else ""
    why = ", ".join(filter(None, (short, differs)))
    return f"{found['canal']}: {why}" if why else ""


def dam(body: Mapping[str, Any]) -> str:
    return _DAM.get(str(body.get("state")), "Dam")
