"""Bounds of what may be entered are no figures that a programme sets: what some had set of them goes."""

from __future__ import annotations

from typing import Any

from django.db import migrations

GONE = (
    "length.least",
    "length.most",
    "curvature.radius_least",
    "curvature.radius_most",
    "wall.most",
    "canal.width_least",
    "canal.width_most",
)


def forget(apps: Any, schema_editor: Any) -> None:
    apps.get_model("cases", "ThresholdOverride").objects.filter(key__in=GONE).delete()


class Migration(migrations.Migration):
    dependencies = [("cases", "0018_taking_over")]

    operations = [migrations.RunPython(forget, migrations.RunPython.noop)]
