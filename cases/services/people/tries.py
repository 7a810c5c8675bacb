"""Wrong tries to sign in, counted for a few minutes."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import timedelta

from django.utils import timezone

from cases.domain.errors import TooManyTries
from cases.models import FailedSignIn
from planning.foundation.encoding import digest

WINDOW = timedelta(minutes=5)
# By hand nobody misses more often; a list of passwords is not tried at this pace.
MOST_FOR_ONE_NAME = 5
# A whole class may sit behind one address.
MOST_FROM_ONE_ADDRESS = 60

Counted = tuple[str, int]
"""A key under which wrong tries are counted, and how many there may be."""


def of_name_and_address(name: str, address: str) -> tuple[Counted, ...]:
    return (digest(f"{name} {address}"), MOST_FOR_ONE_NAME), (digest(address), MOST_FROM_ONE_ADDRESS)


def refuse_after_many(tries: Iterable[Counted]) -> None:
    """Raises TooManyTries."""
    since = timezone.now() - WINDOW
    for key, most in tries:
        if FailedSignIn.objects.filter(key=key, at__gt=since).count() >= most:
            raise TooManyTries(minutes=int(WINDOW.total_seconds() // 60))


def count_wrong(tries: Iterable[Counted]) -> None:
    """What no longer counts is cleared away on this occasion."""
    FailedSignIn.objects.filter(at__lte=timezone.now() - WINDOW).delete()
    FailedSignIn.objects.bulk_create(FailedSignIn(key=key) for key, _ in tries)
