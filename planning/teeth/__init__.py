"""Teeth: their names in three notations, in and out, and the canals to expect in each."""

from planning.teeth.anatomy import (
    CanalOnOffer,
    LengthReference,
    LookForKind,
    MainCanal,
    Prevalence,
    Tooth,
    all_teeth,
    find,
    like,
    tooth,
    usual_range,
)
from planning.teeth.notation import Notation, NotationMissing, ToothName

__all__ = [
    "CanalOnOffer",
    "LengthReference",
    "LookForKind",
    "MainCanal",
    "Notation",
    "NotationMissing",
    "Prevalence",
    "Tooth",
    "ToothName",
    "all_teeth",
    "find",
    "like",
    "tooth",
    "usual_range",
]
