"""Answers that are given again to who sends the same again."""

from __future__ import annotations

from django.db import models

from cases.models.base import HASH_LENGTH

MOST_KEY = 100


class KeptAnswer(models.Model):
    """What somebody was answered to a request with an idempotency key, for a day."""

    asker_id = models.UUIDField(help_text="Of the person or the service.")
    key = models.CharField(max_length=MOST_KEY)
    sent_hash = models.CharField(max_length=HASH_LENGTH, help_text="Of what was sent, to where and on which condition.")
    status = models.PositiveSmallIntegerField()
    headers = models.JSONField()
    body = models.TextField()
    at = models.DateTimeField(auto_now_add=True)

    class Meta:
        constraints = [models.UniqueConstraint(fields=["asker_id", "key"], name="one_answer_to_a_key")]
        indexes = [models.Index(fields=["at"], name="kept_answer_by_time")]

    def __str__(self) -> str:
        return f"{self.status}, {self.at:%Y-%m-%d %H:%M}"
