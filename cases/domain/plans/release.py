"""Which canals an approval leaves out: those that were returned, and those that share an end with one of them."""

from __future__ import annotations

from collections.abc import Mapping

from cases.domain.events.payloads import NotReleased

Joins = Mapping[str, str | None]
"""The canals of a plan, each with the main canal that it joins."""


def left_out(returned: Mapping[str, str], joins: Joins) -> tuple[NotReleased, ...]:
    """The canals that an approval leaves out, in the order of the plan: the returned ones with their remarks, and those
    that share an end with one of them.
    """
    left = []
    for canal in joins:
        partner = next(
            (other for other in returned if other != canal and _end(other, joins) == _end(canal, joins)), None
        )
        if canal in returned:
            left.append(NotReleased(canal=canal, remark=returned[canal]))
        elif partner is not None:
            left.append(NotReleased(canal=canal, remark="", joins=partner))
    return tuple(left)


def _end(canal: str, joins: Joins) -> str:
    """The canal at whose terminus this one ends: the main canal that it joins, else itself."""
    return joins.get(canal) or canal
