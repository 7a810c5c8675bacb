"""Views of resources: the capability statement, reading and searching by type, all of a patient, our own codes.

They are described by the capability statement, in the words of who reads FHIR, and not in the API's own description.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping
from datetime import datetime
from typing import Any, ClassVar

from django.conf import settings
from django.http import HttpResponse
from django.utils.http import http_date
from rest_framework.exceptions import ErrorDetail, NotAcceptable
from rest_framework.permissions import AllowAny
from rest_framework.renderers import JSONRenderer
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api import problems
from cases.api.base import View, asker, key_of
from cases.api.bearer import scopes_of
from cases.api.fhir import outcomes, search, types
from cases.api.fhir.case import Reader
from cases.api.fhir.types import EVERYTHING_PARAMETERS, PAGE, Type
from cases.api.needs import FHIR_PREFIX, PREFIX
from cases.domain.access.scopes import Scope
from cases.domain.errors import NotHere
from cases.exports.fhir.bundles import MEDIA_TYPE, bundle, capability_statement
from cases.exports.fhir.codes import Codes
from cases.exports.fhir.elements import as_json

FORMATS = ("json", "application/json", "text/json", MEDIA_TYPE)


class FhirJson(JSONRenderer):
    media_type = MEDIA_TYPE


class FhirView(View):
    schema = None  # type: ignore[assignment]
    query: ClassVar[Mapping[str, Collection[str]]] = {"GET": ("_format",)}
    # Of this several hold at once.
    repeated: ClassVar[Collection[str]] = ("_lastUpdated",)
    renderer_classes = (FhirJson, JSONRenderer)

    @staticmethod
    def query_refused(wrong: Mapping[str, ErrorDetail]) -> HttpResponse:
        return outcomes.answer_of(problems.query_refused(wrong))

    def initial(self, request: Request, *args: Any, **kwargs: Any) -> None:
        super().initial(request, *args, **kwargs)
        if request.query_params.get("_format", FORMATS[0]) not in FORMATS:
            raise NotAcceptable("Only JSON is sent.")

    def get_exception_handler(self) -> Callable[..., Response | None]:
        usual = super().get_exception_handler()

        def handler(error: Exception, context: dict[str, Any]) -> Response | None:
            answer: Response | None = usual(error, context)
            if answer is not None:
                answer.data = outcomes.outcome_of(answer.data)
                answer.content_type = MEDIA_TYPE
            return answer

        return handler

    def reader(self, request: Request) -> Reader:
        key = key_of(request)
        return Reader(
            asker=asker(request),
            base=base_of(request),
            api=request.build_absolute_uri(PREFIX),
            sees_images=key is None or Scope.IMAGES_READ in scopes_of(key),
        )


def base_of(request: Request) -> str:
    return request.build_absolute_uri(FHIR_PREFIX).removesuffix("/")


class MetadataView(FhirView):
    permission_classes = (AllowAny,)

    def get(self, request: Request) -> Response:
        version = str(settings.SPECTACULAR_SETTINGS["VERSION"])
        cors = bool(settings.CORS_ALLOWED_ORIGINS)
        return Response(capability_statement(base_of(request), version, types.stated(), cors=cors))


class SearchView(FhirView):
    kind: ClassVar[Type]

    def get(self, request: Request) -> Response:
        reader = self.reader(request)
        page = search.page(self.kind, request.query_params, reader)
        links = {"self": request.build_absolute_uri()}
        if page.after:
            again = request.query_params.copy()
            again["_after"] = page.after
            links["next"] = f"{reader.base}/{self.kind.name}?{again.urlencode()}"
        return Response(bundle(reader.base, page.resources, links))


class ReadView(FhirView):
    kind: ClassVar[Type]

    def get(self, request: Request, resource_id: str) -> Response:
        resource = search.read(self.kind, resource_id, self.reader(request))
        if resource is None:
            raise NotHere(what=self.kind.name)
        changed_at = datetime.fromisoformat(resource["meta"]["lastUpdated"])
        return Response(resource, headers={"Last-Modified": http_date(changed_at.timestamp())})


class EverythingView(FhirView):
    """A patient with all of their cases that the asker sees, in one bundle. References in the whole of it lead into
    it."""

    query = {"GET": (*EVERYTHING_PARAMETERS, "_format")}
    repeated = ("_type",)

    def get(self, request: Request, resource_id: str) -> Response:
        reader = self.reader(request)
        resources = search.everything(resource_id, request.query_params, reader)
        if resources is None:
            raise NotHere(what="Patient")
        return Response(bundle(reader.base, resources, {"self": request.build_absolute_uri()}))


class CodeSystemsView(FhirView):
    permission_classes = (AllowAny,)
    query = {"GET": (*types.CODE_SYSTEM_PARAMETERS, "_format")}

    def get(self, request: Request) -> Response:
        base = base_of(request)
        wanted = {name: request.query_params.get(name) for name in types.CODE_SYSTEM_PARAMETERS}
        systems = [
            as_json(each)
            for each in Codes(base).systems()
            if wanted["url"] in (None, each.url) and (wanted["_id"] is None or each.id in wanted["_id"].split(","))
        ]
        return Response(bundle(base, systems, {"self": request.build_absolute_uri()}))


class CodeSystemView(FhirView):
    permission_classes = (AllowAny,)

    def get(self, request: Request, resource_id: str) -> Response:
        for system in Codes(base_of(request)).systems():
            if system.id == resource_id:
                return Response(as_json(system))
        raise NotHere(what="CodeSystem")


class NothingView(FhirView):
    """Every other address, so that what is not there is said in FHIR's words too."""

    permission_classes = (AllowAny,)

    def get(self, request: Request, nothing: str) -> Response:
        raise NotHere(what="address")


def search_view(type_: Type) -> Callable[..., Any]:
    """The view that searches the type; its query has the names of the table."""
    names = {"GET": (*type_.parameters, *PAGE)}
    view: type[SearchView] = type(f"{type_.name}SearchView", (SearchView,), {"kind": type_, "query": names})
    return view.as_view()


def read_view(type_: Type) -> Callable[..., Any]:
    view: type[ReadView] = type(f"{type_.name}ReadView", (ReadView,), {"kind": type_})
    return view.as_view()
