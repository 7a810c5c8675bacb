"""Deep linking (LTI Deep Linking 2.0): a teacher chooses an assignment, and the platform makes a link of it.

Nobody is signed in for it, and nobody made: the ticket in the form says for which platform it is.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from django.core import signing
from pylti1p3.deep_link import DeepLink
from pylti1p3.deep_link_resource import DeepLinkResource
from pylti1p3.lineitem import LineItem

from cases.domain.errors import NotUsable
from cases.domain.lti import Assignment, teaches
from cases.models import LtiPlatform
from cases.services.lti.launches import use_up
from cases.services.lti.line import refuse_address
from cases.services.lti.messages import LaunchRefused, Message, registration_of

TICKET, TICKET_S = "lti deep link", 3600


@dataclass(frozen=True, slots=True, kw_only=True)
class Carried:
    """What the teacher's browser brings to the platform."""

    address: str
    jwt: str


def begin(*, message: Message) -> str:
    """A ticket for whoever may choose. The launch is used up. Raises LaunchRefused."""
    use_up(nonce=message.nonce)
    if not teaches(message.roles):
        raise LaunchRefused("Assignments are chosen by who teaches the course.")
    asked = message.deep_link or {}
    back = str(asked.get("deep_link_return_url", ""))
    try:
        refuse_address(back, at="deep_link_return_url")
    except NotUsable:
        raise LaunchRefused from None
    ticket = {
        "platform": str(message.platform.pk),
        "deployment": message.deployment_id,
        "back": back,
        "data": asked.get("data"),
    }
    return signing.dumps(ticket, salt=TICKET)


def answer(ticket: str, assignment: Assignment, *, launch_address: str) -> Carried:
    """The signed answer with the assignment as a link. Raises LaunchRefused for a ticket that has ended."""
    try:
        held = signing.loads(ticket, salt=TICKET, max_age=TICKET_S)
    except signing.BadSignature:
        raise LaunchRefused("This choice took too long.") from None
    platform = LtiPlatform.objects.filter(pk=held["platform"], active=True).first()
    if platform is None:
        raise LaunchRefused
    settings: Any = {"deep_link_return_url": held["back"], "data": held["data"]}
    link = DeepLink(registration_of(platform), held["deployment"], settings)
    message = link.get_message_jwt([_resource(assignment, launch_address)])
    # What the platform did not give it does not get back.
    message = {name: value for name, value in message.items() if value is not None}
    return Carried(address=held["back"], jwt=link.encode_jwt(message))


class _InWindow(DeepLinkResource):
    """Opens in a window of its own: this server shows nothing in a frame."""

    def to_dict(self) -> dict[str, object]:
        return {**super().to_dict(), "window": {"targetName": "_blank"}}


def _resource(assignment: Assignment, launch_address: str) -> DeepLinkResource:
    title = f"Plan tooth {assignment.iso}"
    grade = LineItem().set_label(title).set_score_maximum(1).set_resource_id("-".join(assignment.custom.values()))
    made = _InWindow().set_url(launch_address).set_title(title).set_lineitem(grade)
    return made.set_custom_params(assignment.custom)
