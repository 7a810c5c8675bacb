"""Reads resources as a program would: by address, or by a search page after page."""

from __future__ import annotations

from typing import Any
from urllib.parse import urlencode

from rest_framework.test import APIClient

from cases.models import Person
from tests.cast import client

BASE = "/api/fhir/R4"
HOST = "http://testserver"


def ask(person: Person | APIClient | None, path: str, status: int = 200, **query: Any) -> Any:
    asker = person if isinstance(person, APIClient) else client(person)
    answer = asker.get(f"{BASE}/{path}" + (f"?{urlencode(query, doseq=True)}" if query else ""))
    assert answer.status_code == status, answer.content
    assert answer["Content-Type"] == "application/fhir+json"
    return answer.json()


def shown(person: Person | APIClient | None, type_: str, **query: Any) -> list[dict[str, Any]]:
    """All that a search shows, page after page."""
    resources, path = [], f"{type_}?{urlencode(query, doseq=True)}"
    while path:
        bundle = ask(person, path)
        resources += [entry["resource"] for entry in bundle.get("entry", ())]
        links = {link["relation"]: link["url"] for link in bundle["link"]}
        path = links.get("next", "").removeprefix(f"{HOST}{BASE}/")
    return resources


def ids(resources: list[dict[str, Any]]) -> set[str]:
    return {each["id"] for each in resources}
