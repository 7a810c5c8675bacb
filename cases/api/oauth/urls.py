"""Addresses of OAuth 2, by the names under which the library tells them. The page that asks a person is the front
end's."""

from __future__ import annotations

from django.urls import path
from oauth2_provider.views import OAuthProtectedResourceMetadataView

from cases.api.oauth import views

urlpatterns = [
    path("oauth/token", views.TokensView.as_view(), name="token"),
    path("oauth/revoke", views.RevocationView.as_view(), name="revoke-token"),
    path("oauth/introspect", views.IntrospectionView.as_view(), name="introspect"),
    path(".well-known/oauth-authorization-server", views.MetadataView.as_view(), name="oauth-server-metadata"),
    path(
        ".well-known/oauth-protected-resource",
        OAuthProtectedResourceMetadataView.as_view(),
        name="oauth-resource-metadata",
    ),
]
