"""Bends in space as they are shown."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from cases.mapping.markings import bend_of, in_space_of
from cases.models import BendInSpace, Canal, Marking
from planning.radiograph.values import Between


@dataclass(frozen=True, slots=True)
class BendInSpaceShown:
    row: BendInSpace
    in_space: Between
    outdated: bool
    """The canal was marked anew on one of the two images since, or one of them counts no more."""


def bends_of_canal(canal: Canal) -> Sequence[BendInSpaceShown]:
    """All bends in space of the canal, in the order in which they were combined."""
    rows = canal.bends_in_space.select_related("made_by", "first__image", "second__image").order_by("number")
    return [bend_shown(row) for row in rows]


def bend_shown(row: BendInSpace) -> BendInSpaceShown:
    outdated = any(_overtaken(marking, row.canal.name) for marking in (row.first, row.second))
    return BendInSpaceShown(row=row, in_space=in_space_of(row), outdated=outdated)


def _overtaken(marking: Marking, canal: str) -> bool:
    if not marking.image.counts_in(canal):
        return True
    later = Marking.objects.filter(image=marking.image_id, number__gt=marking.number)
    return any(bend_of(each, canal) is not None for each in later)
