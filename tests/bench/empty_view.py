"""The program's addresses, and that of a request that does nothing but ask who it is.

In one table: one that is exchanged is read anew by the request that comes next.
"""

from __future__ import annotations

from django.urls import path
from rest_framework.permissions import IsAuthenticated
from rest_framework.request import Request
from rest_framework.response import Response
from rest_framework.views import APIView

from frontend.server import urls


class Empty(APIView):
    permission_classes = [IsAuthenticated]

    def get(self, request: Request) -> Response:
        return Response({})


urlpatterns = [path("empty", Empty.as_view()), *urls.urlpatterns]
