"""Working lengths that a supervisor measured beside those of the plan, to compare."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from typing import Annotated

from cases.domain.errors import NoSuchCanal, NotUsable
from planning.foundation.bounds import within


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnLength:
    """The supervisor's working length of one canal; it changes nothing of the plan."""

    canal: str
    length_mm: Annotated[float, within("length")]
    """From the canal's reference point, as the plan's."""


def refuse_unusable(lengths: Sequence[OwnLength], canals: Collection[str]) -> None:
    """Raises NoSuchCanal for a canal that the plan does not have, NotUsable for a second length of one."""
    said: set[str] = set()
    for number, own in enumerate(lengths):
        if own.canal not in canals:
            raise NoSuchCanal(canal=own.canal, canals=", ".join(canals), at=("own_lengths", number, "canal"))
        if own.canal in said:
            raise NotUsable(reason=f"Give one length of {own.canal}.", at=("own_lengths", number, "canal"))
        said.add(own.canal)
