"""The administration. Records can be looked at here and not changed; people, kits and figures can."""

from __future__ import annotations

from typing import Any

from django import forms
from django.contrib import admin
from django.contrib.auth.admin import UserAdmin
from django.contrib.auth.forms import AdminUserCreationForm
from django.core.exceptions import ValidationError
from django.http import HttpRequest
from planning import tables

from cases import models


class LookedAt(admin.ModelAdmin[Any]):
    """Rows that are only shown. What changes them is a service with its rules, never this page."""

    def has_add_permission(self, request: HttpRequest) -> bool:
        return False

    def has_change_permission(self, request: HttpRequest, obj: Any = None) -> bool:
        return False

    def has_delete_permission(self, request: HttpRequest, obj: Any = None) -> bool:
        return False


@admin.register(models.Person)
class PersonAdmin(UserAdmin):
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


class MembershipInline(admin.TabularInline[models.Membership, models.Programme]):
    model = models.Membership
    extra = 0


class ThresholdForm(forms.ModelForm[models.ThresholdOverride]):
    def clean_key(self) -> str:
        key = str(self.cleaned_data["key"])
        if key not in tables.published():
            raise ValidationError(f"'{key}' is no figure of the planner's tables.", code="unknown-figure")
        return key


class ThresholdInline(admin.TabularInline[models.ThresholdOverride, models.Programme]):
    model = models.ThresholdOverride
    form = ThresholdForm
    extra = 0


@admin.register(models.Programme)
class ProgrammeAdmin(admin.ModelAdmin[models.Programme]):
    list_display = ("name", "invented")
    inlines = (MembershipInline, ThresholdInline)


class InstrumentInline(admin.TabularInline[models.KitInstrument, models.Kit]):
    model = models.KitInstrument
    extra = 0


class NeedleInline(admin.TabularInline[models.KitNeedle, models.Kit]):
    model = models.KitNeedle
    extra = 0


@admin.register(models.Kit)
class KitAdmin(admin.ModelAdmin[models.Kit]):
    list_display = ("name", "programme")
    inlines = (InstrumentInline, NeedleInline)


admin.site.register(
    [
        models.Canal,
        models.CanalPlan,
        models.Case,
        models.ChangeLog,
        models.DemoPatient,
        models.JunctionReading,
        models.LengthReading,
        models.Review,
        models.ReviewRemark,
        models.Root,
        models.TechniqueRecord,
        models.Tooth,
        models.ToothPlanVersion,
        models.TreatmentEvent,
    ],
    LookedAt,
)
admin.site.site_header = admin.site.site_title = "Fourth Canal"
