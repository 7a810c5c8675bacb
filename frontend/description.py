"""The API's description, made once in a process and kept as it is sent."""

from __future__ import annotations

import gzip
from dataclasses import dataclass
from hashlib import sha256
from threading import Lock
from typing import Any, ClassVar

from django.http import HttpResponse, HttpResponseBase
from django.utils.cache import get_conditional_response, patch_vary_headers
from drf_spectacular.generators import SchemaGenerator
from drf_spectacular.renderers import OpenApiJsonRenderer, OpenApiYamlRenderer
from drf_spectacular.views import SpectacularAPIView, SpectacularSwaggerSplitView
from rest_framework.request import Request


@dataclass(frozen=True, slots=True)
class Kept:
    """The description in one format, as it is or compressed."""

    body: bytes
    tag: str
    """Of exactly these bytes: a strong one."""


class Description:
    """Made by whoever asks first; the others wait, for the generator is not made for two at once: it loads its own
    parts while it works."""

    def __init__(self) -> None:
        self._making = Lock()
        self._kept: dict[tuple[str, bool], Kept] = {}

    def kept(self, form: str, *, compressed: bool) -> Kept:
        """`form` is json or yaml."""
        with self._making:
            if not self._kept:
                self._kept = _made()
        return self._kept[form, compressed]


def _made() -> dict[tuple[str, bool], Kept]:
    described = SchemaGenerator().get_schema(request=None, public=True)
    made = {}
    for renderer in (OpenApiJsonRenderer(), OpenApiYamlRenderer()):
        plain = bytes(renderer.render(described, renderer.media_type, {}))
        for compressed in (False, True):
            body = gzip.compress(plain, mtime=0) if compressed else plain
            made[renderer.format, compressed] = Kept(body, f'"{sha256(body).hexdigest()}"')
    return made


description = Description()


class DescriptionView(SpectacularAPIView):
    """The generator's own view, except that it answers what is kept."""

    query: ClassVar = {"GET": ("format",)}

    def _get_schema_response(self, request: Request) -> HttpResponseBase:
        renderer: Any = request.accepted_renderer
        compressed = "gzip" in request.headers.get("Accept-Encoding", "")
        kept = description.kept(renderer.format, compressed=compressed)
        charset = f"; charset={renderer.charset}" if renderer.charset else ""
        answer = HttpResponse(kept.body, content_type=f"{renderer.media_type}{charset}")
        answer["ETag"] = kept.tag
        answer["Content-Disposition"] = f'inline; filename="fourth-canal.{renderer.format}"'
        if compressed:
            answer["Content-Encoding"] = "gzip"
        patch_vary_headers(answer, ["Accept", "Accept-Encoding"])
        conditional = get_conditional_response(request._request, etag=kept.tag, response=answer)
        return conditional or answer


class DocsView(SpectacularSwaggerSplitView):
    """Pages to try the API on. Its script is at the same address, by `script`."""

    query: ClassVar = {"GET": ("script",)}
