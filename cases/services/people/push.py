"""Web Push: who is notified of what, where, and under which key. The worklist shows it all to those who take none."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Sequence

from cryptography.hazmat.primitives import serialization
from cryptography.hazmat.primitives.asymmetric import ec
from django.conf import settings
from django.db import transaction

from cases.domain.access.roles import Role
from cases.domain.errors import NotAllowed, NotUsable
from cases.domain.push import News, NewsKind, refuse_inward
from cases.models import Case, Membership, Person, PushKey, PushSubscription, TreatmentEvent
from cases.services.people import push_sender
from cases.services.people.sealed import PrivateKey, point, quoted, unquoted

MOST_DEVICES = 10  # of one person; the oldest go
OF_AN_EMERGENCY = frozenset({NewsKind.EMERGENCY, NewsKind.CORRECTED, NewsKind.NOT_SO})
KEPT_S = 3600  # that a push service waits for a phone that is off: later, the list says how things are by then
AUTH_BYTES = 16


def public_key() -> str:
    """The server's public key as browsers take it, in base64url. Made with the database."""
    return quoted(point(own_key()))


def own_key() -> PrivateKey:
    """The server's key of RFC 8292, the same for every process on this database."""
    row = PushKey.objects.first() or PushKey.objects.get_or_create(pk=1, defaults={"private_pem": new_key()})[0]
    key = serialization.load_pem_private_key(row.private_pem.encode(), password=None)
    if not isinstance(key, PrivateKey):
        raise TypeError("The kept key is not one of those made here.")
    return key


def new_key() -> str:
    """A private key on P-256 as PEM (RFC 8292)."""
    made = ec.generate_private_key(ec.SECP256R1())
    form = serialization.PrivateFormat.PKCS8
    return made.private_bytes(serialization.Encoding.PEM, form, serialization.NoEncryption()).decode()


@transaction.atomic
def subscribe(*, actor: Person, endpoint: str, p256dh: str, auth: str) -> PushSubscription:
    """The subscription, the actor's from now on. Raises NotAllowed for who supervises nowhere, NotUsable."""
    if not Membership.objects.filter(person=actor, role=Role.SUPERVISOR).exists():
        raise NotAllowed(reason="Notifications are for supervisors.")
    refuse_inward(endpoint, http_here=settings.PUSH_HTTP_HERE)
    _refuse_keys(p256dh, auth)
    keys = {"person": actor, "p256dh": p256dh.rstrip("="), "auth": auth.rstrip("=")}
    row, _ = PushSubscription.objects.update_or_create(endpoint=endpoint, defaults=keys)
    others = PushSubscription.objects.filter(person=actor).exclude(pk=row.pk).order_by("-created_at", "-pk")
    # One less, as the one that has just come is not among the others.
    PushSubscription.objects.filter(pk__in=list(others.values_list("pk", flat=True)[MOST_DEVICES - 1 :])).delete()
    return row


def unsubscribe(*, actor: Person, endpoint: str) -> None:
    """The browser is told nothing any more; harmless where it was not, and where it is somebody else's."""
    PushSubscription.objects.filter(person=actor, endpoint=endpoint).delete()


def unsubscribe_all(*, person: Person) -> None:
    """None of the person's browsers is told anything any more, until it is signed in again."""
    PushSubscription.objects.filter(person=person).delete()


def _refuse_keys(p256dh: str, auth: str) -> None:
    try:
        ec.EllipticCurvePublicKey.from_encoded_point(ec.SECP256R1(), unquoted(p256dh))
    except ValueError:
        raise NotUsable(reason="This is no public key on the curve P-256.", at=("p256dh",)) from None
    try:
        right = len(unquoted(auth)) == AUTH_BYTES
    except ValueError:
        right = False
    if not right:
        raise NotUsable(reason=f"This is no secret of {AUTH_BYTES} bytes.", at=("auth",))


def tell(case: Case, items: Sequence[News]) -> None:
    """Notifies the supervisors of the programme once the transaction is committed. No failure here undoes a record."""

    def on_their_way() -> None:
        _tell(case, items)

    if items:
        # A function with a name: what Django logs of one that fails is its name.
        transaction.on_commit(on_their_way, robust=True)


def _tell(case: Case, items: Sequence[News]) -> None:
    supervisors = Membership.objects.filter(
        programme=case.programme_id, role=Role.SUPERVISOR, person__is_active=True
    ).values("person")
    subscriptions = list(PushSubscription.objects.filter(person__in=supervisors))
    if not subscriptions:
        return
    key = own_key()
    for item in items:
        message = json.dumps(_payload(case, item), ensure_ascii=False).encode()
        for row in subscriptions:
            push_sender.put(
                push_sender.Letter(
                    subscription_id=row.pk,
                    endpoint=row.endpoint,
                    p256dh=row.p256dh,
                    auth=row.auth,
                    message=message,
                    key=key,
                    topic=_topic(case, item),
                    urgent=item.what in OF_AN_EMERGENCY,
                    kept_s=KEPT_S,
                )
            )


def _payload(case: Case, item: News) -> dict[str, str]:
    """What the browser is told: of the patient only the alias. It is sealed, so the push service reads none of it."""
    event = TreatmentEvent.objects.select_related("actor").get(pk=item.by) if item.by else None
    return {
        "case_id": str(case.pk),
        "alias": case.patient.alias,
        "tooth": case.tooth.iso,
        "canal": item.canal,
        "what": item.what,
        "hold_point": item.hold_point,
        **({"happened": item.happened, "by": str(event.actor)} if event else {}),
    }


def _topic(case: Case, item: News) -> str:
    """Later news of the same canal replaces one still on its way (RFC 8030, 5.4: at most 32 characters)."""
    about = f"{case.pk} {item.canal}".encode()
    return quoted(hashlib.sha256(about).digest()[:24])
