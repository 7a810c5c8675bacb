"""Who was invited to a programme, and what would come of a list of people."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from uuid import UUID

from django.db.models import Q, QuerySet
from django.utils import timezone

from cases.domain.access.invited import InvitationState, Invited, same_username
from cases.domain.access.people_list import LineFault, ListLine, read_people
from cases.domain.access.permissions import May
from cases.models import Invitation, Person
from cases.queries import seen


class LineState(StrEnum):
    """What would come of one line of a list."""

    NEW = "new"
    """They would be invited."""
    INVITED = "invited"
    """They have a link that counts."""
    MEMBER = "member"
    """They belong to the programme."""
    WRONG = "wrong"


@dataclass(frozen=True, slots=True, kw_only=True)
class ListedLine:
    """One line of a list of people."""

    line: int
    """In the file, counted from 1."""
    state: LineState
    person: Invited | None
    """Null where something is wrong."""
    faults: tuple[LineFault, ...]


def listed(person: Person, programme_id: UUID) -> QuerySet[Invitation]:
    """All of the programme. Raises NotHere and NotAllowed."""
    seen.refuse_unless_may(May.KEEP_PEOPLE, person, programme_id)
    rows: QuerySet[Invitation] = Invitation.objects.filter(programme=programme_id)
    return rows.select_related("made_by", "used_by")


def in_state(rows: QuerySet[Invitation], state: InvitationState) -> QuerySet[Invitation]:
    """Those of the rows that stand so at this moment."""
    unused = Q(used_at=None, withdrawn_at=None)
    stands = {
        InvitationState.OPEN: unused & Q(ends_at__gt=timezone.now()),
        InvitationState.ENDED: unused & Q(ends_at__lte=timezone.now()),
        InvitationState.USED: Q(used_at__isnull=False),
        InvitationState.WITHDRAWN: Q(withdrawn_at__isnull=False),
    }
    return rows.filter(stands[state])


def checked(person: Person, programme_id: UUID, text: str) -> list[ListedLine]:
    """What would come of each line; nothing is changed. Raises NotHere, NotAllowed, NotUsable for what is no list."""
    seen.refuse_unless_may(May.KEEP_PEOPLE, person, programme_id)
    known = Invitation.objects.usernames(programme_id)
    return [
        ListedLine(line=each.line, state=_state(each, known), person=each.person, faults=each.faults)
        for each in read_people(text)
    ]


def _state(line: ListLine, known: Mapping[str, bool]) -> LineState:
    if line.person is None:
        return LineState.WRONG
    belongs = known.get(same_username(line.person.username))
    if belongs is None:
        return LineState.NEW
    return LineState.MEMBER if belongs else LineState.INVITED
