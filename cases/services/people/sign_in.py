"""Signing in, slowly for those who guess."""

from __future__ import annotations

from datetime import timedelta

from django.contrib.auth import authenticate, login, logout
from django.core import signing
from django.http import HttpRequest

from cases.domain.errors import PasswordWrong, SignInRefused
from cases.models import FailedSignIn, Person
from cases.services.people import tries
from cases.services.people.tries import MOST_FOR_ONE_NAME, Counted, of_name_and_address
from planning.foundation.encoding import digest

# A browser keeps who signed in there last. Whoever guesses from the same address does not lock that person out.
WAS_HERE = "was-here"
WAS_HERE_FOR = timedelta(days=365)


def sign_in(*, request: HttpRequest, username: str, password: str) -> Person:
    """The person, signed in. Raises SignInRefused and TooManyTries; the two say nothing of which names exist."""
    counted = _tries(request, username)
    tries.refuse_after_many(counted)
    person = authenticate(request, username=username, password=password)
    if not isinstance(person, Person):
        tries.count_wrong(counted)
        raise SignInRefused
    # Of this name alone: what others at the same address got wrong still counts.
    FailedSignIn.objects.filter(key=counted[0][0]).delete()
    begin(request=request, person=person)
    return person


def begin(*, request: HttpRequest, person: Person) -> None:
    """A session of somebody who has just shown who they are."""
    login(request, person)


def was_here(person: Person) -> str:
    """A signed note for the browser that this person has signed in there before. It lets nobody in."""
    return signing.dumps(str(person.pk), salt=WAS_HERE)


def _tries(request: HttpRequest, username: str) -> tuple[Counted, ...]:
    address, name = request.META.get("REMOTE_ADDR", ""), username.casefold()
    known = _who_was_here(request)
    if known is not None and known.get_username().casefold() == name:
        return ((digest(f"was here {known.pk}"), MOST_FOR_ONE_NAME),)
    return of_name_and_address(name, address)


def _who_was_here(request: HttpRequest) -> Person | None:
    try:
        key = signing.loads(request.COOKIES.get(WAS_HERE, ""), salt=WAS_HERE, max_age=WAS_HERE_FOR)
    except signing.BadSignature:
        return None
    return Person.objects.filter(pk=key).first()


def confirm(*, person: Person, password: str) -> None:
    """The person who is signed in is asked once more. Raises PasswordWrong and TooManyTries."""
    counted = ((digest(f"again {person.pk}"), MOST_FOR_ONE_NAME),)
    tries.refuse_after_many(counted)
    if not person.check_password(password):
        tries.count_wrong(counted)
        raise PasswordWrong(at=("password",))


def sign_out(*, request: HttpRequest) -> None:
    """Ends the session."""
    logout(request)
