"""What changed in a programme, in order."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from uuid import UUID

from cases.domain.errors import NotOfThisFeed
from cases.domain.feed import READ_ANEW, START, Bookmark, FeedKind, Resource
from cases.models import Case, Change, ToothPlanVersion
from cases.models.prepared import Prepared
from cases.queries import seen
from cases.queries.seen import Asker

OF_REVISION = (Resource.CASE, Resource.CANAL)
"""What has the case's revision in its ETag."""
_LAST = Prepared(
    lambda programme: Change.objects.filter(programme=programme, position__isnull=False).order_by("-position")[:1]
)


@dataclass(frozen=True, slots=True)
class Page:
    """Changes after a bookmark, oldest first."""

    results: Sequence[Listed]
    next: Bookmark
    """How far they go, among those of others too."""
    more: bool


@dataclass(frozen=True, slots=True)
class Listed:
    """One change, and what of the present ETag of its resource a change is compared with."""

    row: Change
    state: str | None

    @property
    def event(self) -> str | None:
        return self.row.event or None


def page(asker: Asker, programme_id: UUID, *, after: Bookmark | None, limit: int) -> Page:
    """The next changes that the asker may see, of those with positions; none where `after` is None, which is the end.

    Raises NotOfThisFeed where nothing, or another change, stands where `after` says.
    """
    # First how far they go: what gets its position meanwhile is for the next page.
    end = _end(programme_id)
    after = _stands(programme_id, after, end)
    if after == end:
        return Page((), end, False)
    between = seen.changes(asker, programme_id).filter(position__gt=after.position, position__lte=end.position)
    # One more than is shown tells that there are more.
    rows = list(between.order_by("position")[: limit + 1])
    shown, more = rows[:limit], len(rows) > limit
    return Page(_with_states(shown), shown[-1].bookmark if more else end, more)


def position(programme_id: UUID, after: Bookmark | None) -> int:
    """The position of who has read up to a bookmark, or to the end where it is None. Raises NotOfThisFeed."""
    return _stands(programme_id, after, _end(programme_id)).position


def listed(row: Change) -> Listed:
    """One change, as on a page."""
    return _with_states([row])[0]


def _stands(programme_id: UUID, after: Bookmark | None, end: Bookmark) -> Bookmark:
    if after is None:
        return end
    if after not in (START, end) and _at(programme_id, after.position) != after:
        raise NotOfThisFeed(at=("after",))
    return after


def _end(programme_id: UUID) -> Bookmark:
    last = _LAST.first(programme_id)
    return last.bookmark if last else START


def _at(programme_id: UUID, position: int) -> Bookmark | None:
    row = Change.objects.filter(programme=programme_id, position=position).first()
    return row.bookmark if row else None


def _with_states(rows: Sequence[Change]) -> Sequence[Listed]:
    """Each with its case's revision, or its version's hash, as it is now."""
    versions = {row.subject_id for row in rows if _read_anew(row) is Resource.VERSION}
    cases = {row.case_id for row in rows if row.case_id and _read_anew(row) in OF_REVISION}
    states: dict[UUID | None, str] = dict(ToothPlanVersion.objects.filter(pk__in=versions).values_list("pk", "hash"))
    states |= {pk: str(number) for pk, number in Case.objects.filter(pk__in=cases).values_list("pk", "revision")}
    return [Listed(row, states.get(row.case_id if _read_anew(row) in OF_REVISION else row.subject_id)) for row in rows]


def _read_anew(row: Change) -> Resource:
    return READ_ANEW[FeedKind(row.kind)]
