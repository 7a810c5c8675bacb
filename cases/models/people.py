"""People, and what they are in which programme."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from django.contrib.auth.hashers import make_password
from django.contrib.auth.models import AbstractBaseUser, BaseUserManager, PermissionsMixin
from django.contrib.auth.validators import UnicodeUsernameValidator
from django.db import models, transaction
from django.db.models import Q

from cases.domain.access.roles import Role
from cases.domain.uuid7 import uuid7
from cases.models.base import HASH_LENGTH, Identified, Listed, choices, one_of
from cases.models.prepared import Prepared

if TYPE_CHECKING:
    from cases.models.clients import Key


class PersonManager(BaseUserManager["Person"]):
    def create_user(self, username: str, password: str | None = None, **fields: Any) -> Person:
        """A person who can sign in; with no password, one who cannot."""
        person = self.model(username=self.model.normalize_username(username), **fields)
        # Not as a change: there is nothing yet that a new password would end.
        person.password = make_password(password)
        person.save(using=self._db)
        return person

    def create_superuser(self, username: str, password: str | None = None, **fields: Any) -> Person:
        return self.create_user(username, password, is_staff=True, is_superuser=True, **fields)


class Person(AbstractBaseUser, PermissionsMixin):
    """Somebody who signs in. The name stands in this row alone, and records point here by id, so it can be erased."""

    id = models.UUIDField(primary_key=True, default=uuid7, editable=False)
    username = models.CharField(max_length=60, unique=True, validators=[UnicodeUsernameValidator()])
    display_name = models.CharField(max_length=80, blank=True)
    is_active = models.BooleanField(default=True)
    is_staff = models.BooleanField(default=False)
    created_at = models.DateTimeField(auto_now_add=True)

    # Not stored: the key by which this person, or a service for them, asks at this moment.
    by_key: Key | None = None

    objects = PersonManager()

    USERNAME_FIELD = "username"
    REQUIRED_FIELDS = ["display_name"]

    class Meta:
        verbose_name_plural = "people"
        constraints = [models.CheckConstraint(condition=~Q(username=""), name="person_has_username")]

    def __str__(self) -> str:
        return self.display_name or self.username

    def save(self, *args: Any, **kwargs: Any) -> None:
        """Together with what a new password ends."""
        with transaction.atomic():
            super().save(*args, **kwargs)

    def set_unusable_password(self) -> None:
        super().set_unusable_password()
        # Told like any other change, which Django does of what is not None.
        self._password = ""


class Programme(Identified):
    """A school's course. Nothing of one programme is seen from another."""

    name = models.CharField(max_length=120, unique=True)
    invented = models.BooleanField(default=False, help_text="Demonstration: no such school, people or cases.")
    created_at = models.DateTimeField(auto_now_add=True)
    images_most_mb = models.PositiveIntegerField(default=2000, help_text="Room for the images of all its cases.")

    class Meta:
        constraints = [models.CheckConstraint(condition=~Q(name=""), name="programme_has_name")]

    def __str__(self) -> str:
        return self.name


class MembershipManager(models.Manager["Membership"]):
    def role_of(self, person: Person, programme_id: Any) -> Role | None:
        """What the person is in the programme; None where they are nothing there."""
        row = _ROLE.first(person.pk, programme_id)
        return Role(row[0]) if row else None


class Membership(Listed):
    """What a person is in a programme: one role in each. What ended is a `FormerMembership`: this row alone opens."""

    person = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="memberships")
    programme = models.ForeignKey(Programme, on_delete=models.PROTECT, related_name="memberships")
    role = models.CharField(max_length=12, choices=choices(Role))
    group = models.CharField(max_length=60, blank=True)
    joined_at = models.DateTimeField(auto_now_add=True)
    treats_patients_until = models.DateField(
        null=True, help_text="Of a student: the last day on which they may treat patients; null: they may not."
    )

    objects = MembershipManager()

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["person", "programme"], name="one_role_in_a_programme"),
            models.CheckConstraint(condition=one_of("role", Role), name="membership_role_known"),
        ]
        indexes = [models.Index(fields=["programme", "role"], name="membership_by_role")]

    def __str__(self) -> str:
        return f"{self.person}, {self.role}"


_ROLE: Prepared[tuple[str]] = Prepared(
    lambda person, programme: Membership.objects.filter(person=person, programme=programme).values_list("role")
)


class FormerMembership(models.Model):
    """What a person was in a programme until it ended. Records show it; it opens nothing."""

    person = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="former_memberships")
    programme = models.ForeignKey(Programme, on_delete=models.PROTECT, related_name="former_memberships")
    role = models.CharField(max_length=12, choices=choices(Role))
    group = models.CharField(max_length=60, blank=True)
    joined_at = models.DateTimeField()
    ended_at = models.DateTimeField(auto_now_add=True)
    ended_by = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="+")

    class Meta:
        constraints = [models.CheckConstraint(condition=one_of("role", Role), name="former_membership_role_known")]

    def __str__(self) -> str:
        return f"{self.person}, {self.role} until {self.ended_at:%Y-%m-%d}"


class FailedSignIn(models.Model):
    """A wrong try to sign in, kept for a few minutes. Of the name that was typed only a hash is kept."""

    key = models.CharField(max_length=HASH_LENGTH)
    at = models.DateTimeField(auto_now_add=True)

    class Meta:
        indexes = [models.Index(fields=["key", "at"], name="failed_sign_in_by_key")]

    def __str__(self) -> str:
        return f"{self.at:%Y-%m-%d %H:%M}"
