"""Every code of a problem, explained: made from the refusals, the sentences of faults and the fields themselves."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from http import HTTPStatus
from inspect import cleandoc
from typing import Any

from rest_framework import serializers

from cases.api.problems import OUR_CODES, status_of
from cases.domain.errors import CaseError
from planning.foundation.encoding import SENTENCES, sentence_of
from planning.foundation.errors import NotUnderstood, PlanningError, Refusal
from planning.foundation.pages import Page

NEVER_ANSWERED = (Refusal, CaseError, PlanningError)  # what others are kinds of
OF_FAULTS = "Put it right where `pointer` leads, and send it again."
# What a sentence is filled with where no field is there to fill it.
_ANY = {"most": "N", "max_length": "N", "min_length": "N", "min_value": "N", "max_value": "N"}
_ANY["expected"] = "one of those that the sentence lists"
_AGAIN = "Send it again after as many seconds as `Retry-After` says."


@dataclass(frozen=True, slots=True, kw_only=True)
class ProblemCode:
    """A code of a problem, or of one of its `errors`."""

    code: str
    statuses: tuple[int, ...]
    """Of the answers in which it stands."""
    meaning: str
    remedy: str
    """What to do."""
    within: str | None
    """Null for a code in the `type` of a problem; else the problem in whose `errors` alone it stands."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ProblemCodes(Page):
    """All of them, by code."""

    results: tuple[ProblemCode, ...]


# What the framework and the door refuse by themselves, before any rule of the records or the planner is asked.
_OTHERS: Mapping[str, tuple[HTTPStatus, str, str]] = {
    "parse-error": (HTTPStatus.BAD_REQUEST, "A body or a header that cannot be read.", "The sentence names the place."),
    "not-authenticated": (HTTPStatus.UNAUTHORIZED, "Nobody is signed in.", "Sign in, or send a key, and go on."),
    "token-missing": (
        HTTPStatus.FORBIDDEN,
        "A change by a session came without the token of the page's cookie.",
        "Ask for the session, which brings the cookie, and send this again with it.",
    ),
    "scope-missing": (
        HTTPStatus.FORBIDDEN,
        "The key has not the scope that this needs.",
        "Have a key made with the scope that `WWW-Authenticate` names.",
    ),
    "key-opens-not": (HTTPStatus.FORBIDDEN, "No key opens this.", "Have it done by a person, signed in at the app."),
    "method-not-allowed": (
        HTTPStatus.METHOD_NOT_ALLOWED,
        "That method is not for this address.",
        "Take one of those in `Allow`.",
    ),
    "not-acceptable": (HTTPStatus.NOT_ACCEPTABLE, "`Accept` names nothing that is sent here.", "Accept JSON."),
    "body-too-slow": (HTTPStatus.REQUEST_TIMEOUT, "What was sent did not arrive in time.", "Send it again."),
    "body-too-long": (HTTPStatus.REQUEST_ENTITY_TOO_LARGE, "More bytes than are taken here.", "Send less at once."),
    "unsupported-media-type": (
        HTTPStatus.UNSUPPORTED_MEDIA_TYPE,
        "A body of a kind that is not taken here.",
        "Send what the description says, JSON for most, and name it in `Content-Type`.",
    ),
    "too-often": (HTTPStatus.TOO_MANY_REQUESTS, "That was asked for too often.", _AGAIN),
    "server-error": (
        HTTPStatus.INTERNAL_SERVER_ERROR,
        "Something broke on our side.",
        "Send it again in a moment; if it lasts, tell whoever looks after the server the `X-Request-Id`.",
    ),
    "busy": (HTTPStatus.SERVICE_UNAVAILABLE, "The server works for others; nothing was kept.", _AGAIN),
    "took-too-long": (
        HTTPStatus.SERVICE_UNAVAILABLE,
        "That took longer than one request may.",
        "Ask for less, or send it again after as many seconds as `Retry-After` says.",
    ),
}


@cache
def problem_codes() -> Mapping[str, ProblemCode]:
    """By code, in the order of the alphabet."""
    known = {each.code: each for each in (*_of_faults(), *_of_others(), *_of_refusals())}
    return dict(sorted(known.items()))


def refusals(kind: type[Refusal] = Refusal) -> Iterator[type[Refusal]]:
    """Every kind that can be answered, what others are a kind of before them."""
    if kind not in NEVER_ANSWERED:
        yield kind
    for each in kind.__subclasses__():
        yield from refusals(each)


def _of_refusals() -> Iterator[ProblemCode]:
    seen: set[str] = set()
    for kind in refusals():
        if kind.code in seen:  # another way to come to the same
            continue
        seen.add(kind.code)
        meaning, _, remedy = cleandoc(kind.__doc__ or "").partition("\n\n")
        statuses = {status_of(kind).value} | ({HTTPStatus.BAD_REQUEST.value} if kind.code in _faults() else set())
        yield ProblemCode(
            code=kind.code,
            statuses=tuple(sorted(statuses)),
            meaning=meaning.replace("\n", " "),
            remedy=remedy.replace("\n", " "),
            within=None,
        )


def _of_others() -> Iterator[ProblemCode]:
    for code, (status, meaning, remedy) in _OTHERS.items():
        yield ProblemCode(code=code, statuses=(status.value,), meaning=meaning, remedy=remedy, within=None)


def _of_faults() -> Iterator[ProblemCode]:
    status = HTTPStatus.BAD_REQUEST.value
    for code, meaning in _faults().items():
        yield ProblemCode(code=code, statuses=(status,), meaning=meaning, remedy=OF_FAULTS, within=NotUnderstood.code)


@cache
def _faults() -> Mapping[str, str]:
    """What can be wrong with one place, by code: what the planner finds too, and what only a field of ours can."""
    own = {
        OUR_CODES.get(name, name.replace("_", "-")): str(sentence).format_map(_ANY)
        for field in _kinds_of_fields(serializers.Field)
        if field.__module__.startswith("cases.")
        for name, sentence in vars(field).get("default_error_messages", {}).items()
    }
    return {**own, **{code: sentence_of(code, **_ANY) for code in SENTENCES}}


def _kinds_of_fields(kind: type[Any]) -> Iterator[type[Any]]:
    for each in kind.__subclasses__():
        yield each
        yield from _kinds_of_fields(each)
