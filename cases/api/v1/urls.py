"""Addresses of the records. Lists and openings name the programme; single things go by id."""

from __future__ import annotations

from django.urls import path

from cases.api.v1 import (
    bands,
    canals,
    cases,
    figures,
    images,
    overrides,
    plans,
    programmes,
    record,
    sessions,
    treatment,
    worklist,
)

urlpatterns = [
    path("session", sessions.SessionView.as_view()),
    path("programmes/<uuid:programme_id>", programmes.ProgrammeView.as_view()),
    path("programmes/<uuid:programme_id>/kits", programmes.KitsView.as_view()),
    path("programmes/<uuid:programme_id>/techniques", programmes.TechniquesView.as_view()),
    path("programmes/<uuid:programme_id>/figures", figures.FiguresView.as_view()),
    path("programmes/<uuid:programme_id>/figures/<str:key>", figures.FigureView.as_view()),
    path("programmes/<uuid:programme_id>/widths", figures.WidthsView.as_view()),
    path("programmes/<uuid:programme_id>/widths/<str:tooth>/<str:canal>", figures.CanalWidthsView.as_view()),
    path("programmes/<uuid:programme_id>/cases", cases.CasesView.as_view()),
    path("programmes/<uuid:programme_id>/running-work", worklist.RunningView.as_view()),
    path("programmes/<uuid:programme_id>/worklist", worklist.WorklistView.as_view()),
    path("cases/<uuid:case_id>", cases.CaseView.as_view()),
    path("cases/<uuid:case_id>/canals", canals.CanalsView.as_view()),
    path("cases/<uuid:case_id>/roots/<str:name>", canals.RootView.as_view()),
    path("cases/<uuid:case_id>/preview", plans.PreviewView.as_view()),
    path("cases/<uuid:case_id>/events", treatment.EventsView.as_view()),
    path("cases/<uuid:case_id>/record", record.RecordView.as_view()),
    path("cases/<uuid:case_id>/bands", bands.BandsView.as_view()),
    path("cases/<uuid:case_id>/images", images.ImagesView.as_view()),
    path("cases/<uuid:case_id>/images/<uuid:image_id>", images.ImageView.as_view()),
    path("cases/<uuid:case_id>/images/<uuid:image_id>/content", images.ContentView.as_view()),
    path("cases/<uuid:case_id>/images/<uuid:image_id>/thumbnail", images.ThumbnailView.as_view()),
    path("cases/<uuid:case_id>/images/<uuid:image_id>/data-set", images.DataSetView.as_view()),
    path("cases/<uuid:case_id>/record.pdf", record.RecordPdfView.as_view()),
    path("cases/<uuid:case_id>/plan-versions", plans.VersionsView.as_view()),
    path("cases/<uuid:case_id>/overrides", overrides.OverridesView.as_view()),
    path("overrides/<uuid:override_id>/withdraw", overrides.WithdrawView.as_view()),
    path("canals/<uuid:canal_id>", canals.CanalView.as_view()),
    path("canals/<uuid:canal_id>/readings", canals.ReadingsView.as_view()),
    path("canals/<uuid:canal_id>/junctions", canals.JunctionsView.as_view()),
    path("plan-versions/<uuid:version_id>", plans.VersionView.as_view()),
    path("plan-versions/<uuid:version_id>/submit", plans.SubmitView.as_view()),
    path("plan-versions/<uuid:version_id>/withdraw", plans.WithdrawView.as_view()),
    path("plan-versions/<uuid:version_id>/reviews", plans.ReviewsView.as_view()),
    path("plan-versions/<uuid:version_id>/release", plans.ReleaseView.as_view()),
    path("plan-versions/<uuid:version_id>/changes", plans.ChangesView.as_view()),
]
