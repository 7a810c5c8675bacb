"""Addresses that a platform is told of, and the one its teachers' form is sent to."""

from __future__ import annotations

from django.urls import path

from frontend.lti import views

urlpatterns = [
    path("login", views.login, name="lti-login"),
    path("launch", views.launch, name="lti-launch"),
    path("choice", views.choice, name="lti-choice"),
    path("keys", views.keys, name="lti-keys"),
]
