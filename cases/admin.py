"""The administration. Records can be looked at here and not changed; people, kits and figures can."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, cast

from django import forms
from django.contrib import admin
from django.contrib.auth.admin import UserAdmin
from django.contrib.auth.forms import AdminUserCreationForm
from django.core.exceptions import ValidationError
from django.http import HttpRequest

from cases import models
from cases.domain.feed import FeedKind
from cases.domain.images import BYTES_PER_MB
from cases.services.common import feed
from planning.foundation import tables

if TYPE_CHECKING:
    # The framework's classes take their parameters from the type checker alone.
    AnyAdmin = admin.ModelAdmin[Any]
    PeopleAdmin = UserAdmin[models.Person]
    ProgrammesAdmin = admin.ModelAdmin[models.Programme]
    KitsAdmin = admin.ModelAdmin[models.Kit]
    InProgramme = admin.TabularInline[Any, models.Programme]
    InKit = admin.TabularInline[Any, models.Kit]
    ThresholdModelForm = forms.ModelForm[models.ThresholdOverride]
else:
    AnyAdmin = ProgrammesAdmin = KitsAdmin = admin.ModelAdmin
    PeopleAdmin = UserAdmin
    InProgramme = InKit = admin.TabularInline
    ThresholdModelForm = forms.ModelForm


def _actor(request: HttpRequest) -> models.Person:
    return cast(models.Person, request.user)


class LookedAt(AnyAdmin):
    """Rows that are only shown. What changes them is a service with its rules, never this page."""

    def has_add_permission(self, request: HttpRequest) -> bool:
        return False

    def has_change_permission(self, request: HttpRequest, obj: Any = None) -> bool:
        return False

    def has_delete_permission(self, request: HttpRequest, obj: Any = None) -> bool:
        return False


@admin.register(models.Person)
class PersonAdmin(PeopleAdmin):
    ordering = ("username",)
    list_display = ("username", "display_name", "is_active", "is_staff")
    list_filter = ("is_active", "is_staff")
    search_fields = ("username", "display_name")
    fieldsets = (
        (None, {"fields": ("username", "password", "display_name")}),
        ("May", {"fields": ("is_active", "is_staff", "is_superuser", "groups", "user_permissions")}),
    )
    add_form = AdminUserCreationForm
    add_fieldsets = ((None, {"fields": ("username", "display_name", "usable_password", "password1", "password2")}),)

    def save_model(self, request: HttpRequest, obj: models.Person, form: Any, change: bool) -> None:
        super().save_model(request, obj, form, change)
        feed.person_changed(actor=_actor(request), person=obj)


class MembershipInline(InProgramme):
    model = models.Membership
    extra = 0


class ThresholdForm(ThresholdModelForm):
    def clean_key(self) -> str:
        key = str(self.cleaned_data["key"])
        if key not in tables.published():
            raise ValidationError(f"'{key}' is no figure of the planner's tables.", code="unknown-figure")
        return key


class ThresholdInline(InProgramme):
    model = models.ThresholdOverride
    form = ThresholdForm
    extra = 0


@admin.register(models.Programme)
class ProgrammeAdmin(ProgrammesAdmin):
    list_display = ("name", "invented", "images_quota")
    readonly_fields = ("images_quota",)
    inlines = (MembershipInline, ThresholdInline)

    @admin.display(description="Room for images")
    def images_quota(self, programme: models.Programme) -> str:
        """How much is used, beside how much there is: whoever sets it sees when it is to be raised."""
        used_mb = models.Image.objects.bytes_of(programme.pk) / BYTES_PER_MB
        return f"{used_mb:.0f} of {programme.images_most_mb} MB used"

    def save_formset(self, request: HttpRequest, form: Any, formset: Any, change: bool) -> None:
        super().save_formset(request, form, formset, change)
        rows = [*formset.new_objects, *(row for row, _ in formset.changed_objects), *formset.deleted_objects]
        for row in rows:
            is_member = isinstance(row, models.Membership)
            feed.tell(
                actor=_actor(request),
                kind=FeedKind.PERSON_CHANGED if is_member else FeedKind.FIGURES_CHANGED,
                subject_id=row.person_id if is_member else row.programme_id,
                programme_id=row.programme_id,
            )


class InstrumentInline(InKit):
    model = models.KitInstrument
    extra = 0


class NeedleInline(InKit):
    model = models.KitNeedle
    extra = 0


class FillingInline(InKit):
    model = models.KitFilling
    extra = 0


@admin.register(models.Kit)
class KitAdmin(KitsAdmin):
    list_display = ("name", "programme")
    inlines = (InstrumentInline, NeedleInline, FillingInline)

    def log_change(self, request: HttpRequest, obj: models.Kit, message: Any) -> Any:
        self._tell(request, obj)
        return super().log_change(request, obj, message)

    def log_addition(self, request: HttpRequest, obj: models.Kit, message: Any) -> Any:
        self._tell(request, obj)
        return super().log_addition(request, obj, message)

    def log_deletions(self, request: HttpRequest, queryset: Any) -> Any:
        for kit in queryset:
            self._tell(request, kit)
        return super().log_deletions(request, queryset)

    def _tell(self, request: HttpRequest, kit: models.Kit) -> None:
        actor = _actor(request)
        feed.tell(actor=actor, kind=FeedKind.KIT_CHANGED, subject_id=kit.pk, programme_id=kit.programme_id)


admin.site.register(
    [
        models.AccessKey,
        models.BendInSpace,
        models.Canal,
        models.CanalPlan,
        models.Case,
        models.CautionOverride,
        models.Change,
        models.ChangeLog,
        models.DemoPatient,
        models.Image,
        models.JunctionReading,
        models.LengthReading,
        models.ProgrammeWidths,
        models.Review,
        models.ReviewRemark,
        models.Revocation,
        models.Root,
        models.Service,
        models.TechniqueRecord,
        models.Tooth,
        models.PlanTexts,
        models.ToothPlanVersion,
        models.TreatmentEvent,
    ],
    LookedAt,
)
admin.site.site_header = admin.site.site_title = "Fourth Canal"
