"""Where supervisors let themselves be notified, and the key by which push services know this server."""

from __future__ import annotations

from django.db import models

from cases.models.base import Identified
from cases.models.people import Person

MOST_ENDPOINT = 1000
KEY_LENGTH = 87  # 65 bytes of a point on P-256, base64url without padding
AUTH_LENGTH = 22  # 16 bytes


class PushKey(models.Model):
    """The server's key of RFC 8292, the only row. It is kept beside the subscriptions, which count for this key alone:
    so every server of this database has it, and a restored backup has the right one."""

    id = models.PositiveSmallIntegerField(primary_key=True, default=1, editable=False)
    private_pem = models.TextField(editable=False)

    class Meta:
        constraints = [models.CheckConstraint(condition=models.Q(id=1), name="one_push_key")]

    def __str__(self) -> str:
        return "Push key"


class PushSubscription(Identified):
    """One browser of a person, as its push service knows it. Whoever signs in there next takes it over."""

    person = models.ForeignKey(Person, on_delete=models.CASCADE, related_name="push_subscriptions")
    endpoint = models.CharField(max_length=MOST_ENDPOINT, unique=True)
    p256dh = models.CharField(max_length=KEY_LENGTH, help_text="The browser's public key, base64url.")
    auth = models.CharField(max_length=AUTH_LENGTH, help_text="The browser's secret for this subscription, base64url.")
    created_at = models.DateTimeField(auto_now_add=True)

    def __str__(self) -> str:
        return f"{self.person}, {self.created_at:%Y-%m-%d}"
