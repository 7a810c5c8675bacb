"""Notifications to supervisors: what is worth one, and where one may be sent."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from urllib.parse import urlsplit

from cases.domain.errors import NotUsable
from cases.domain.progress import emergencies
from cases.domain.progress.case_state import CaseState
from cases.domain.progress.emergencies import Emergency
from cases.domain.progress.summary import CanalSummary

INWARD = frozenset({"localhost", "local", "internal", "intranet", "lan", "home", "corp", "arpa"})
"""Last labels of names that lead into a network of one's own (RFC 6761, RFC 6762; the others common practice)."""


NAME = re.compile(r"([a-z0-9-]+\.)+[a-z][a-z0-9-]*")
"""A host name of more than one label whose last one is no number."""


class NewsKind(StrEnum):
    EMERGENCY = "emergency"
    CORRECTED = "corrected"
    """An emergency was something else."""
    NOT_SO = "not_so"
    """An emergency was not so."""
    ASKED = "asked"
    HOLD_POINT = "hold_point"


@dataclass(frozen=True, slots=True, kw_only=True)
class News:
    """Something a supervisor is told at once, wherever they are."""

    what: NewsKind
    canal: str = ""
    """Or several, asked for in one; empty for an emergency: it halts the whole tooth."""
    hold_point: str = ""
    """What the canal waits for, or empty."""
    happened: str = ""
    """Of an emergency: what, as last said."""
    by: str = ""
    """Id of the event that says it last, of an emergency."""


def news(
    course: CaseState, canals: Sequence[CanalSummary], before: Mapping[str, str], fresh: Collection[str]
) -> tuple[News, ...]:
    """What came with the `fresh` events (by id): an emergency, canals asked for, canals that came to a hold point.

    `before`: the hold point at which each canal waited already. A canal is told once, asked for before merely there.
    """
    items = [_of_emergency(emergency) for emergency in emergencies.fresh(course.emergencies, fresh)]
    open_ = () if course.visit.closed else canals
    # Canals that were asked for together are one message.
    asked: dict[str, list[CanalSummary]] = {}
    for canal in open_:
        if course.canals[canal.canal].asking in fresh:
            asked.setdefault(canal.together or canal.canal, []).append(canal)
    for group in asked.values():
        names = ", ".join(canal.canal for canal in group)
        about = ", ".join(dict.fromkeys(canal.hold_point for canal in group if canal.hold_point))
        items.append(News(what=NewsKind.ASKED, canal=names, hold_point=about))
    for canal in open_:
        if course.canals[canal.canal].asking in fresh:
            continue
        if canal.hold_point and canal.hold_point != before.get(canal.canal):
            items.append(News(what=NewsKind.HOLD_POINT, canal=canal.canal, hold_point=canal.hold_point))
    return tuple(items)


def _of_emergency(emergency: Emergency) -> News:
    corrected = NewsKind.CORRECTED if emergency.what else NewsKind.NOT_SO
    return News(
        what=corrected if emergency.corrected_by else NewsKind.EMERGENCY,
        happened=emergency.what,
        by=emergency.corrected_by or emergency.id,
    )


def refuse_inward(
    endpoint: str,
    *,
    http_here: bool,
    at: str = "endpoint",
    reason: str = "A push service has a public name and answers by HTTPS.",
) -> None:
    """Raises NotUsable unless the address is HTTPS at a public name: this server must not be sent into its own network.

    Every address in numbers is refused, in whatever notation: push services have names. `http_here` lets plain HTTP at
    127.0.0.1 through, for tests. A public name may still lead inwards; that ends at the handshake, for the server
    there has no certificate of the name, and redirects are not followed.
    """
    try:
        url = urlsplit(endpoint)
        host, port = url.hostname or "", url.port
    except ValueError:
        raise NotUsable(reason="This is no address.", at=(at,)) from None
    if http_here and url.scheme == "http" and host == "127.0.0.1":
        return
    named = NAME.fullmatch(host) and host.rpartition(".")[2] not in INWARD
    if url.scheme != "https" or not named or url.username is not None or port not in (None, 443):
        raise NotUsable(reason=reason, at=(at,))
