"""Addresses of resources, made of the table of types."""

from __future__ import annotations

from django.urls import path

from cases.api.fhir.types import CODE_SYSTEM, EVERYTHING, TYPES
from cases.api.fhir.views import (
    CodeSystemsView,
    CodeSystemView,
    EverythingView,
    MetadataView,
    NothingView,
    read_view,
    search_view,
)

urlpatterns = [
    path("metadata", MetadataView.as_view()),
    path(f"Patient/<str:resource_id>/${EVERYTHING}", EverythingView.as_view()),
    path(CODE_SYSTEM, CodeSystemsView.as_view()),
    path(f"{CODE_SYSTEM}/<str:resource_id>", CodeSystemView.as_view()),
    *(path(name, search_view(type_)) for name, type_ in TYPES.items()),
    *(path(f"{name}/<str:resource_id>", read_view(type_)) for name, type_ in TYPES.items()),
    path("<path:nothing>", NothingView.as_view()),
]
