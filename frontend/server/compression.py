"""Compression on the way: of what gets smaller by it."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponseBase
from django.middleware.gzip import GZipMiddleware

# Compressed already, or not worth the time: megabytes of noise.
AS_THEY_ARE = ("image/jpeg", "image/png", "application/dicom", "application/pdf")


class TextGZip(GZipMiddleware):
    """Django's, for all but images."""

    def process_response(self, request: HttpRequest, response: HttpResponseBase) -> HttpResponseBase:
        if response.headers.get("Content-Type", "").startswith(AS_THEY_ARE):
            return response
        return super().process_response(request, response)
