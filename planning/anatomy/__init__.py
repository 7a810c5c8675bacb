"""Teeth: their names in three notations, in and out, and the canals to expect in each."""

from planning.anatomy.notation import Notation, NotationMissing, ToothName
from planning.anatomy.teeth import (
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
