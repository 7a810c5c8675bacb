"""Writes what other systems are told, in the transaction of the change, and gives positions to what is committed.

No writer waits for another: a change is written without a position. Whoever reads numbers what is there and has none,
one reader at a time. So a position is only ever given to what is committed, what is committed later has a later one,
and none is left out.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any
from uuid import UUID

from django.db import connection, models, transaction

from cases.domain.feed import FeedKind
from cases.domain.plans.lifecycle import Verb
from cases.models import Case, Change, Membership, Person, Programme, TreatmentEvent
from cases.models.prepared import Prepared

KINDS: dict[tuple[str, str], FeedKind | None] = {
    ("Case", "open"): FeedKind.CASE_OPENED,
    ("Case", "change"): FeedKind.CASE_CHANGED,
    ("Case", "correct_alias"): FeedKind.CASE_CHANGED,
    ("Canal", "add"): FeedKind.CANAL_ADDED,
    ("Canal", "change"): FeedKind.CANAL_CHANGED,
    ("Canal", "remove"): FeedKind.CANAL_REMOVED,
    ("Root", "change"): FeedKind.ROOT_CHANGED,
    ("LengthReading", "take"): FeedKind.READING_TAKEN,
    ("LengthReading", "strike"): FeedKind.READING_STRUCK,
    ("JunctionReading", "take"): FeedKind.READING_TAKEN,
    ("JunctionReading", "strike"): FeedKind.READING_STRUCK,
    ("BendInSpace", "combine"): FeedKind.BEND_COMBINED,
    ("Image", "stored"): FeedKind.IMAGE_STORED,
    ("Image", "refused"): FeedKind.IMAGE_REFUSED,
    ("Image", "nobody named"): FeedKind.IMAGE_CHECKED,
    ("Image", "strike"): FeedKind.IMAGE_STRUCK,
    ("Image", "move"): FeedKind.IMAGE_MOVED,
    ("Image", "remove"): FeedKind.IMAGE_REMOVED,
    ("Marking", "mark"): FeedKind.IMAGE_MARKED,
    ("ToothPlanVersion", "propose"): FeedKind.VERSION_MADE,
    ("ToothPlanVersion", Verb.SUBMIT): FeedKind.VERSION_SUBMITTED,
    ("ToothPlanVersion", Verb.WITHDRAW): FeedKind.VERSION_WITHDRAWN,
    ("ToothPlanVersion", Verb.APPROVE): FeedKind.VERSION_APPROVED,
    ("ToothPlanVersion", Verb.RETURN): FeedKind.VERSION_RETURNED,
    ("ToothPlanVersion", Verb.REVOKE): FeedKind.VERSION_REVOKED,
    ("ToothPlanVersion", "release"): FeedKind.VERSION_RELEASED,
    ("ToothPlanVersion", Verb.CARRY_OVER): FeedKind.VERSION_CARRIED_OVER,
    ("ToothPlanVersion", Verb.SUPERSEDE): FeedKind.VERSION_SUPERSEDED,
    ("ToothPlanVersion", Verb.TAKE_UP_AGAIN): FeedKind.VERSION_TAKEN_UP_AGAIN,
    ("CautionOverride", "override"): FeedKind.OVERRIDE_GIVEN,
    ("CautionOverride", "withdraw"): FeedKind.OVERRIDE_WITHDRAWN,
    ("Membership", "join"): FeedKind.PERSON_CHANGED,
    ("Membership", "change"): FeedKind.PERSON_CHANGED,
    ("Membership", "end"): FeedKind.PERSON_CHANGED,
    ("Kit", "add"): FeedKind.KIT_CHANGED,
    ("TechniqueRecord", "add"): FeedKind.TECHNIQUE_ADDED,
    ("Programme", "set figure"): FeedKind.FIGURES_CHANGED,
    ("Programme", "set widths"): FeedKind.WIDTHS_CHANGED,
    # Its events are told themselves.
    ("TreatmentEvent", "take-sign-off"): None,
    # Whoever comes by one is told as a person.
    ("Invitation", "invite"): None,
    ("Invitation", "renew"): None,
    ("Invitation", "withdraw"): None,
    ("Invitation", "use"): None,
    # Where courses are kept is nobody else's business.
    ("LtiPlatform", "register"): None,
    ("LtiPlatform", "change"): None,
    # How somebody signs in is nobody else's business.
    ("OneTimeCode", "confirm"): None,
    ("OneTimeCode", "remove"): None,
    ("AccessKey", "make"): None,
    ("AccessKey", "revoke"): None,
    # Practice is between a student and the supervisors.
    ("PracticeExercise", "start"): None,
    ("PracticeExercise", "end"): None,
    ("PracticeTask", "set"): None,
    ("PracticeTask", "withdraw"): None,
    # Nor whom else all this is told.
    ("Webhook", "add"): None,
    ("Webhook", "change"): None,
    ("Webhook", "turn secret"): None,
    ("Webhook", "replay"): None,
    ("Webhook", "give up"): None,
    ("Webhook", "remove"): None,
    ("Client", "make"): None,
    ("Client", "revoke"): None,
    ("Consent", "give"): None,
    ("Consent", "end"): None,
}
"""What a line of the change log is told as; None: it is told to nobody."""

MOST_AT_ONCE = 5000
"""Positions are given to so many in one go: a tenth of a second."""
_NOT_NUMBERED = Prepared(
    lambda programme: Change.objects.filter(programme=programme, position=None).values_list("programme")[:1]
)
_HAPPENED = """
INSERT INTO {table} (programme_id, kind, event, case_id, subject_id, actor_id, at)
SELECT %s, %s, kind, case_id, id, actor_id, server_time FROM {events} WHERE case_id = %s AND position >= %s
ORDER BY position
"""
_NUMBER = """
UPDATE {table} SET position = numbered.position FROM (
    SELECT id, row_number() OVER (ORDER BY id)
        + (SELECT coalesce(max(position), 0) FROM {table} WHERE programme_id = %s) AS position
    FROM {table} WHERE programme_id = %s AND position IS NULL ORDER BY id LIMIT %s
) AS numbered WHERE {table}.id = numbered.id
"""


def tell(*, actor: Person, kind: FeedKind, subject_id: Any, case: Case | None = None, programme_id: Any = None) -> None:
    """One change; `subject_id` is of what is to be read anew. The programme is the case's where there is one."""
    Change.objects.create(
        programme_id=case.programme_id if case else programme_id,
        kind=kind,
        case=case,
        subject_id=subject_id,
        actor=actor,
    )


def logged(*, actor: Person, verb: str, subject: models.Model, case: Case | None, programme_id: Any) -> None:
    """A line of the change log, told where it is told to anybody. Raises KeyError for a line that no row says it of."""
    kind = KINDS[type(subject).__name__, verb]
    if kind is not None:
        tell(actor=actor, kind=kind, subject_id=_to_read(subject), case=case, programme_id=programme_id)


def _to_read(subject: Any) -> Any:
    """The id of what shows the row: of a reading its canal, of a marking its image, of a membership its person."""
    name = type(subject).__name__
    if name == "Membership":
        return subject.person_id
    if name in ("LengthReading", "JunctionReading", "BendInSpace"):
        return subject.canal_id
    return subject.image_id if name == "Marking" else subject.pk


def happened(case: Case, events: Sequence[TreatmentEvent]) -> None:
    """Events just written, the last of the case."""
    statement = _HAPPENED.format(table=Change._meta.db_table, events=TreatmentEvent._meta.db_table)
    with connection.cursor() as cursor:
        first = events[0].position
        cursor.execute(statement, [_stored(case.programme_id), FeedKind.EVENT.value, _stored(case.pk), first])


def person_changed(*, actor: Person, person: Person) -> None:
    """Told in every programme of the person's."""
    for programme_id in Membership.objects.filter(person=person).values_list("programme", flat=True):
        tell(actor=actor, kind=FeedKind.PERSON_CHANGED, subject_id=person.pk, programme_id=programme_id)


def number(programme_id: UUID) -> None:
    """Gives positions to what is committed and has none, in the order in which it was written."""
    if _NOT_NUMBERED.first(programme_id) is None:
        return
    with transaction.atomic():
        # One reader at a time: what another one numbered meanwhile is seen once this lock is held.
        Programme.objects.select_for_update(no_key=True).get(pk=programme_id)
        id_ = _stored(programme_id)
        with connection.cursor() as cursor:
            cursor.execute(_NUMBER.format(table=Change._meta.db_table), [id_, id_, MOST_AT_ONCE])


def _stored(id_: UUID) -> Any:
    """The id as the database is given it."""
    return Programme._meta.pk.get_db_prep_value(id_, connection)
