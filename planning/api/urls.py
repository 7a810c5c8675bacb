"""Addresses of the stateless API."""

from __future__ import annotations

from django.urls import path

from planning.api import views

urlpatterns = [
    path("teeth", views.teeth_list, name="teeth"),
    path("teeth/<str:iso>", views.teeth_retrieve, name="tooth"),
    path("techniques", views.techniques_list, name="techniques"),
    path("difficulty-factors", views.difficulty_factors_list, name="difficulty-factors"),
    path("instrument-sizes", views.instrument_sizes_list, name="instrument-sizes"),
    path("compute/tooth", views.compute_tooth, name="compute-tooth"),
    path("compute/technique-check", views.compute_technique_check, name="compute-technique-check"),
    path("compute/length", views.compute_length, name="compute-length"),
    path("compute/curvature", views.compute_curvature, name="compute-curvature"),
    path("compute/measure", views.compute_measure, name="compute-measure"),
    path("compute/two-views", views.compute_two_views, name="compute-two-views"),
    path("compute/run-sheet", views.compute_run_sheet, name="compute-run-sheet"),
    path("compute/plan", views.compute_plan, name="compute-plan"),
]
