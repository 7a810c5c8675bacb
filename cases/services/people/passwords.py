"""What a changed password ends, whoever changed it and however: all that was opened under the one before."""

from __future__ import annotations

from django.contrib.auth.models import AbstractBaseUser
from django.db import transaction

from cases.models import Person
from cases.services.people import access_keys, consents, push


class EndsWhatWasOpened:
    """Has the form of a validator, since Django tells those of every changed password. Sessions end by themselves: each
    is bound to the password under which it began."""

    def validate(self, password: str, user: AbstractBaseUser | None = None) -> None:
        """Every password passes here."""

    def get_help_text(self) -> str:
        return "A new password ends the person's sessions, keys and notifications, and what they let other programs do."

    def password_changed(self, password: str, user: AbstractBaseUser | None = None) -> None:
        if isinstance(user, Person):
            end_what_was_opened(person=user)


@transaction.atomic
def end_what_was_opened(*, person: Person) -> None:
    """None of the person's keys counts any more, no client acts for them, and no browser is sent notifications."""
    access_keys.revoke_all_own(person=person)
    consents.end_all(person=person)
    push.unsubscribe_all(person=person)
