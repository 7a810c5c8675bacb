"""Signing in, slowly for those who guess."""

from __future__ import annotations

from datetime import timedelta

from django.contrib.auth import authenticate, login, logout
from django.core import signing
from django.http import HttpRequest
from django.utils import timezone

from cases.domain.errors import PasswordWrong, SignInRefused, TooManyTries
from cases.models import FailedSignIn, Person
from planning.foundation.encoding import digest

WINDOW = timedelta(minutes=5)
# By hand nobody misses more often; a list of passwords is not tried at this pace.
MOST_FOR_ONE_NAME = 5
# A whole class may sit behind one address.
MOST_FROM_ONE_ADDRESS = 60
# A browser keeps who signed in there last. Whoever guesses from the same address does not lock that person out.
WAS_HERE = "was-here"
WAS_HERE_FOR = timedelta(days=365)


def sign_in(*, request: HttpRequest, username: str, password: str) -> Person:
    """The person, signed in. Raises SignInRefused and TooManyTries; the two say nothing of which names exist."""
    tries = _tries(request, username)
    since = timezone.now() - WINDOW
    for key, most in tries:
        if FailedSignIn.objects.filter(key=key, at__gt=since).count() >= most:
            raise TooManyTries(minutes=int(WINDOW.total_seconds() // 60))
    person = authenticate(request, username=username, password=password)
    if not isinstance(person, Person):
        # What no longer counts is cleared away on this occasion.
        FailedSignIn.objects.filter(at__lte=since).delete()
        FailedSignIn.objects.bulk_create(FailedSignIn(key=key) for key, _ in tries)
        raise SignInRefused
    # Of this name alone: what others at the same address got wrong still counts.
    FailedSignIn.objects.filter(key=tries[0][0]).delete()
    login(request, person)
    return person


def was_here(person: Person) -> str:
    """A signed note for the browser that this person has signed in there before. It lets nobody in."""
    return signing.dumps(str(person.pk), salt=WAS_HERE)


def _tries(request: HttpRequest, username: str) -> tuple[tuple[str, int], ...]:
    """The keys under which wrong tries are counted, each with how many there may be."""
    address, name = request.META.get("REMOTE_ADDR", ""), username.casefold()
    known = _who_was_here(request)
    if known is not None and known.get_username().casefold() == name:
        return ((digest(f"was here {known.pk}"), MOST_FOR_ONE_NAME),)
    return (digest(f"{name} {address}"), MOST_FOR_ONE_NAME), (digest(address), MOST_FROM_ONE_ADDRESS)


def _who_was_here(request: HttpRequest) -> Person | None:
    try:
        key = signing.loads(request.COOKIES.get(WAS_HERE, ""), salt=WAS_HERE, max_age=WAS_HERE_FOR)
    except signing.BadSignature:
        return None
    return Person.objects.filter(pk=key).first()


def confirm(*, person: Person, password: str) -> None:
    """The person who is signed in is asked once more. Raises PasswordWrong and TooManyTries."""
    key, since = digest(f"again {person.pk}"), timezone.now() - WINDOW
    if FailedSignIn.objects.filter(key=key, at__gt=since).count() >= MOST_FOR_ONE_NAME:
        raise TooManyTries(minutes=int(WINDOW.total_seconds() // 60))
    if not person.check_password(password):
        FailedSignIn.objects.create(key=key)
        raise PasswordWrong(at=("password",))


def sign_out(*, request: HttpRequest) -> None:
    """Ends the session."""
    logout(request)
