"""Django's shell, with an invented case at hand."""

from __future__ import annotations

from typing import Any

from django.core.management.commands import shell
from django.db import DatabaseError
from django.db.models import Count

NAMES = "case, version, plan_input, plan, student, supervisor, api (a client that is signed in as the student)"


class Command(shell.Command):
    help = f"{shell.Command.help} The invented case with the most work is at hand: {NAMES}."

    def get_namespace(self, **options: Any) -> dict[str, Any]:
        """Every model by its name, and what belongs to the case; the models alone where there is none."""
        names: dict[str, Any] = super().get_namespace(**options)
        if options["no_imports"]:
            return names
        try:
            at_hand = _at_hand()
        except DatabaseError:
            at_hand = {}
        if options["verbosity"]:
            self.stdout.write(f"At hand: {NAMES}." if at_hand else "No case is at hand: python3 manage.py seed")
        return {**names, **at_hand}


def _at_hand() -> dict[str, Any]:
    from rest_framework.test import APIClient

    from cases.mapping.plans import plan_input_of, plan_of
    from cases.models import Case

    planned = Case.objects.filter(patient__programme__invented=True, versions__isnull=False)
    by_work = planned.annotate(done=Count("events", distinct=True)).order_by("-done", "pk")
    case = by_work.select_related("student", "supervisor").first()
    if case is None:
        return {}
    version = case.versions.latest("number")
    api = APIClient(SERVER_NAME="localhost")
    api.force_authenticate(case.student)
    return {
        "case": case,
        "version": version,
        "plan_input": plan_input_of(version),
        "plan": plan_of(version),
        "student": case.student,
        "supervisor": case.supervisor,
        "api": api,
    }
