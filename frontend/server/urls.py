"""Root addresses: the API, its description and viewer, the administration, and the app's shell for all the rest."""

from __future__ import annotations

from django.contrib import admin
from django.urls import include, path, re_path

from cases.api.oauth import urls as oauth
from frontend import consent, views
from frontend.description import DescriptionView, DocsView

# The library tells where they lie, and asks for them by its own name.
OAUTH = [
    *oauth.urlpatterns,
    path("oauth/authorize", consent.ConsentView.as_view(), name="authorize"),
    path("oauth/consents", consent.ConsentsView.as_view(), name="consents"),
]
urlpatterns = [
    path("api/v1/schema", DescriptionView.as_view(), name="schema"),
    path("api/v1/docs", DocsView.as_view(url_name="schema"), name="docs"),
    path("api/v1/", include("planning.api.urls")),
    path("api/v1/", include("cases.api.v1.urls")),
    path("api/fhir/R4/", include("cases.api.fhir.urls")),
    path("", include((OAUTH, "oauth2_provider"))),
    path("lti/", include("frontend.lti.urls")),
    path("admin/", admin.site.urls),
    # The app's own addresses carry no dot; a missing file must stay missing.
    re_path(r"^(?!(?:api|admin|lti|oauth|static|assets)(?:/|$))[^.]*$", views.shell, name="shell"),
]

handler400 = "frontend.views.bad_request"
handler403 = "frontend.views.permission_denied"
handler404 = "frontend.views.not_found"
handler500 = "frontend.views.server_error"
