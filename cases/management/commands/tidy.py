"""Removes what uploads and crashes left behind, answers and messages that were kept for long enough, and old tokens."""

from __future__ import annotations

from datetime import timedelta
from typing import Any

from django.core.management import CommandParser
from django.core.management.base import BaseCommand, CommandError

from cases.domain.image_errors import StoreAway
from cases.services.common import kept_answers
from cases.services.images import upload
from cases.services.people import invitations, issued_tokens
from cases.services.webhooks import outbox

KEEP_DAYS = 14  # a phone may lie in a drawer over a holiday, its upload half done
LOG_DAYS = 30  # of what webhooks were sent


class Command(BaseCommand):
    """For a timer, once a day."""

    help = "Remove parts of uploads nobody went on with, files that no image owns, old answers, messages and tokens."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("--days", type=int, default=KEEP_DAYS, help=f"how long uploads are kept ({KEEP_DAYS})")

    def handle(self, *args: Any, days: int, **options: Any) -> None:
        self.stdout.write(f"Removed {kept_answers.tidy()} answers that were kept for long enough.")
        tidied_log = outbox.tidy(older_than=timedelta(days=LOG_DAYS))
        self.stdout.write(f"Removed {tidied_log} messages of webhooks from their log.")
        self.stdout.write(f"Removed {issued_tokens.tidy()} codes and tokens of clients that have ended.")
        self.stdout.write(f"Removed {invitations.tidy()} invitations that nobody used, with the names in them.")
        try:
            tidied = upload.tidy(older_than=timedelta(days=days))
        except StoreAway as refusal:
            raise CommandError(str(refusal)) from refusal
        self.stdout.write(f"Removed {tidied.parts} parts of uploads and {tidied.files} files.")
