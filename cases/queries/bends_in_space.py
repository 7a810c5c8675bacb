"""Bends in space as they are shown."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass

from cases.models import BendInSpace, Canal, Marking
from cases.models.mark_values import bend_of
from planning.encoding import Mode, decode
from planning.radiograph.values import Between


@dataclass(frozen=True, slots=True)
class BendInSpaceShown:
    row: BendInSpace
    in_space: Between
    outdated: bool
    """The canal was marked anew on one of the two images since."""


def of_canal(canal: Canal) -> Sequence[BendInSpaceShown]:
    """Every one of the canal, in order."""
    rows = canal.bends_in_space.select_related("made_by", "first", "second").order_by("number")
    return [shown(row) for row in rows]


def shown(row: BendInSpace) -> BendInSpaceShown:
    outdated = any(_marked_since(marking, row.canal.name) for marking in (row.first, row.second))
    return BendInSpaceShown(row=row, in_space=decode(Between, json.loads(row.text), Mode.KEPT), outdated=outdated)


def _marked_since(marking: Marking, canal: str) -> bool:
    later = Marking.objects.filter(image=marking.image_id, number__gt=marking.number)
    return any(bend_of(each, canal) is not None for each in later)
