"""Whom a coordinator invites, and what may stand in each part of it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from cases.domain.access.roles import Role

MOST_NAME, MOST_USERNAME, MOST_GROUP = 80, 60, 60  # the columns of people and memberships
MOST_AT_ONCE = 500
# A link that lies about for longer is found by somebody else.
MOST_DAYS, USUAL_DAYS = 60, 14
_USERNAME = re.compile(r"[\w.@+-]+")


class InvitationState(StrEnum):
    OPEN = "open"
    USED = "used"
    WITHDRAWN = "withdrawn"
    ENDED = "ended"
    """Nobody used it in time."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Invited:
    """Somebody who is invited. What is empty of name and user name, they choose themselves."""

    name: str = ""
    """As it is shown to others."""
    username: str = ""
    role: Role
    group: str = ""


def faults_of(*, name: str, username: str, group: str) -> Iterator[tuple[str, str]]:
    """What is wrong, as the part and a sentence that says what to do."""
    for part, text, most in (
        ("name", name, MOST_NAME),
        ("username", username, MOST_USERNAME),
        ("group", group, MOST_GROUP),
    ):
        if "\ufffd" in text:
            yield part, "A letter could not be read. Save the list as UTF-8 and take it in again."
        elif not text.isprintable():
            yield part, "There is a sign in it that cannot be seen. Type it again."
        elif len(text) > most:
            yield part, f"Write at most {most} letters; these are {len(text)}."
        elif part == "username" and text and not _USERNAME.fullmatch(text):
            yield part, f"'{text}' has a sign that a user name cannot have. Use letters, digits and . @ + - _ alone."


def same_username(username: str) -> str:
    """By which two user names are told apart: not by small and capital letters alone."""
    return username.casefold()
