"""Content security policies: what a page may load and run."""

from __future__ import annotations

from csp.constants import NONE, SELF, UNSAFE_INLINE
from csp.middleware import CSPMiddleware, PolicyParts
from django.http import HttpRequest, HttpResponseBase

STRICT: dict[str, list[str]] = {
    "default-src": [NONE],
    "script-src": [SELF],
    "style-src": [SELF],
    "img-src": [SELF, "data:", "blob:"],
    "font-src": [SELF],
    "connect-src": [SELF],
    "manifest-src": [SELF],
    "worker-src": [SELF],
    "form-action": [SELF],
    "base-uri": [NONE],
    "object-src": [NONE],
    "frame-ancestors": [NONE],
    # The one policy of this name lets the page register its own worker and nothing else.
    "require-trusted-types-for": ["'script'"],
    "trusted-types": ["app"],
}

# The administration's and the API viewer's own scripts write markup, which trusted types forbid, and the viewer
# writes style into its page. Scripts still come from here alone.
TOOLS: dict[str, list[str]] = {
    **{name: values for name, values in STRICT.items() if "trusted-types" not in name},
    "style-src": [SELF, UNSAFE_INLINE],
}
TOOL_PATHS = ("/admin/", "/api/v1/docs")


class PolicyMiddleware(CSPMiddleware):
    """Puts the strict policy on every answer but assets, which are no pages, and the tools' on their own pages."""

    def process_response(self, request: HttpRequest, response: HttpResponseBase) -> HttpResponseBase:
        return response if request.path_info.startswith("/assets/") else super().process_response(request, response)

    def get_policy_parts(
        self, request: HttpRequest, response: HttpResponseBase, report_only: bool = False
    ) -> PolicyParts:
        parts = super().get_policy_parts(request, response, report_only)
        if not report_only and request.path_info.startswith(TOOL_PATHS):
            parts.config = TOOLS
        return parts
