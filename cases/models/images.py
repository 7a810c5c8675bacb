"""Images: what is known of each; the pixels lie in the storage, cleaned, under names made from ids."""

from __future__ import annotations

from typing import Any, get_args

from django.db import models
from django.db.models import F, Q, Sum

from cases.domain.events.payloads import ImagePurpose
from cases.domain.images import BurntInText, ImageKind, ImageState, NameCheck, RemovalReason, name_check
from cases.domain.struck import StruckWhy
from cases.models.base import HASH_LENGTH, AppendOnly, ClientCreated, Identified, choices, one_of
from cases.models.people import Person
from cases.models.teeth import Case

SHOWS = get_args(ImagePurpose)
MOST_UID, MOST_CODE = 64, 16  # characters of a UID and of a code string (DICOM PS3.5, 6.2)


class ImageManager(models.Manager["Image"]):
    def bytes_of(self, programme_id: Any) -> int:
        """How many bytes the programme's images take, those included that were announced and have not arrived."""
        of_programme = self.filter(case__programme_id=programme_id)
        stored = of_programme.aggregate(bytes=Sum("stored_bytes"))["bytes"] or 0
        coming = of_programme.filter(state=ImageState.AWAITED).aggregate(bytes=Sum("sent_bytes"))["bytes"] or 0
        return int(stored + coming)


class Image(ClientCreated):
    """An image of a case. Its id and SHA-256 are made where it was taken; one id never stands for two images."""

    case = models.ForeignKey(Case, on_delete=models.PROTECT, related_name="images")
    canal = models.CharField(max_length=12, blank=True, help_text="Empty where it shows the tooth.")
    purpose = models.CharField(max_length=13, choices=[(each, each.replace("_", " ")) for each in SHOWS])
    taken_by = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="+")
    device_time = models.DateTimeField(help_text="When it was taken, by the device's clock.")
    server_time = models.DateTimeField(auto_now_add=True)
    sha256 = models.CharField(max_length=HASH_LENGTH, help_text="Of what was sent, which is not what is kept.")
    sent_bytes = models.PositiveIntegerField()

    state = models.CharField(max_length=7, choices=choices(ImageState), default=ImageState.AWAITED.value)
    reason = models.TextField(blank=True, help_text="Why it was refused.")
    kind = models.CharField(max_length=5, choices=choices(ImageKind), blank=True)
    width_px = models.PositiveIntegerField(null=True, blank=True)
    height_px = models.PositiveIntegerField(null=True, blank=True)
    view_type = models.CharField(max_length=20, blank=True, help_text="Media type of what screens show.")
    stored_bytes = models.PositiveIntegerField(default=0)
    has_data_set = models.BooleanField(default=False, help_text="A de-identified DICOM data set is kept beside it.")
    sop_class = models.CharField(max_length=MOST_UID, blank=True, help_text="UID of what the data set is an image by.")
    modality = models.CharField(max_length=MOST_CODE, blank=True, help_text="Of the data set, as DICOM codes it.")
    spacing_text = models.TextField(blank=True, help_text="Canonical JSON of what the file said of its scale.")
    burnt_in_text = models.CharField(max_length=7, choices=choices(BurntInText), default=BurntInText.UNKNOWN.value)

    checked_by = models.ForeignKey(
        Person, on_delete=models.PROTECT, related_name="+", null=True, help_text="Looked, and nobody is named in it."
    )
    checked_at = models.DateTimeField(null=True)
    removed_by = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="+", null=True)
    removed_at = models.DateTimeField(null=True)
    removed_for = models.CharField(max_length=16, choices=choices(RemovalReason), blank=True)

    struck = models.BooleanField(default=False, help_text="Counts for nothing; `put_right` says who, when and why.")

    objects = ImageManager()

    class Meta:
        constraints = [
            models.CheckConstraint(condition=one_of("purpose", SHOWS), name="image_shows_known"),
            models.CheckConstraint(condition=one_of("state", ImageState), name="image_state_known"),
            models.CheckConstraint(
                condition=~Q(state=ImageState.REFUSED.value) | ~Q(reason=""), name="image_refused_with_reason"
            ),
            models.CheckConstraint(
                condition=~Q(state=ImageState.STORED.value) | Q(width_px__gte=1, height_px__gte=1, stored_bytes__gte=1),
                name="image_stored_has_pixels",
            ),
            models.CheckConstraint(
                condition=Q(checked_by=None, checked_at=None) | Q(checked_by__isnull=False, checked_at__isnull=False),
                name="image_checked_by_somebody",
            ),
            models.CheckConstraint(
                condition=Q(
                    one_of("removed_for", RemovalReason),
                    state=ImageState.REMOVED.value,
                    removed_by__isnull=False,
                    removed_at__isnull=False,
                    stored_bytes=0,
                    has_data_set=False,
                )
                | Q(~Q(state=ImageState.REMOVED.value), removed_by=None, removed_at=None, removed_for=""),
                name="image_removed_says_why",
            ),
        ]
        indexes = [models.Index(fields=["case", "server_time"], name="images_of_a_case")]

    def __str__(self) -> str:
        return f"{self.purpose} {self.canal}".strip()

    @property
    def name_check(self) -> NameCheck:
        checked = self.checked_by_id is not None
        return name_check(state=ImageState(self.state), burnt_in_text=self.burnt_in_text, checked=checked)

    @property
    def put_right_in_order(self) -> list[ImagePutRight]:
        return sorted(self.put_right.all(), key=lambda each: each.at)

    def counts_in(self, canal: str) -> bool:
        """Whether marks of the canal on this image count: it was neither struck nor moved away from the canal."""
        # An image of the tooth shows several canals, and each counts until it was moved away from that one.
        away = self.canal != canal and self.put_right.filter(canal=canal).exists()
        return not self.struck and not away

    def name_of(self, what: str) -> str:
        """Where a part of it (view, thumbnail, data_set) lies in the storage."""
        return f"{self.case_id}/{self.pk}/{what}"


class ImagePutRight(Identified, AppendOnly):
    """One correction of an image: it was struck, or put to another canal. Earlier ones stay."""

    image = models.ForeignKey(Image, on_delete=models.PROTECT, related_name="put_right")
    at = models.DateTimeField(auto_now_add=True)
    by = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="+")
    why = models.CharField(max_length=11, choices=choices(StruckWhy))
    canal = models.CharField(max_length=12, blank=True, help_text="Where it was.")
    struck = models.BooleanField(help_text="Else it was moved.")
    moved_to = models.CharField(max_length=12, blank=True, help_text="Empty: the tooth; also where it was struck.")

    class Meta:
        constraints = [
            models.CheckConstraint(condition=one_of("why", StruckWhy), name="image_put_right_for_a_reason"),
            models.CheckConstraint(
                condition=Q(struck=True, moved_to="") | Q(~Q(moved_to=F("canal")), struck=False),
                name="image_moved_to_another_canal",
            ),
            models.UniqueConstraint(fields=["image"], condition=Q(struck=True), name="image_struck_once"),
        ]

    def __str__(self) -> str:
        return "struck" if self.struck else f"moved to {self.moved_to or 'the tooth'}"


class ImagePart(models.Model):
    """A piece of an upload that is not complete yet. It is gone once the image is stored or refused."""

    image = models.ForeignKey(Image, on_delete=models.CASCADE, related_name="parts")
    offset = models.PositiveIntegerField()
    length = models.PositiveIntegerField()
    data = models.BinaryField()
    at = models.DateTimeField(auto_now_add=True)

    class Meta:
        constraints = [models.UniqueConstraint(fields=["image", "offset"], name="image_part_once")]

    def __str__(self) -> str:
        return f"from {self.offset}"
