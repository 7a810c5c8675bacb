"""What is refused to programs: of keys by which they know things, and of requests that they send again."""

from __future__ import annotations

from cases.domain.errors import Conflict, NotUsable


class ExternalIdRefused(NotUsable):
    """What was sent as an external id is none, or looks like something of a person.

    Send the key that the row has in the other system.
    """

    code = "external-id-refused"


class KeyUsedDifferently(NotUsable):
    """The `Idempotency-Key` came before, within a day, with another body, to another address or on another condition.

    Send this with a new key.
    """

    code = "idempotency-key-used-differently"
    sentence = "This Idempotency-Key came before with something else. Send this with a new one."


class StillUnderWay(Conflict):
    """The first request with this `Idempotency-Key` is not answered yet.

    Send it again in a moment: the answer is that of the first.
    """

    code = "still-under-way"
    sentence = "The first request with this Idempotency-Key is still under way. Send it again in a moment."


class ExternalIdTaken(Conflict):
    """The service knows another thing of this kind by the external id.

    Send another one, or give that other thing another one first.
    """

    code = "external-id-taken"
    sentence = "You know another {kind} by this external id. Give that one another first."
