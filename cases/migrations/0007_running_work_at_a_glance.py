import json

import django.db.models.deletion
from django.db import migrations, models
from django.db.models import OuterRef, Subquery


def fill(apps, schema_editor):
    """The list of canals becomes one part of what is told; the step in hand is known from the next event on."""
    work, cases = apps.get_model("cases", "RunningWork"), apps.get_model("cases", "Case")
    programme = cases.objects.filter(pk=OuterRef("pk")).values("programme")
    work.objects.update(programme=Subquery(programme))
    for row in work.objects.iterator():
        canals = [canal | {"out_of_band": None} for canal in json.loads(row.text)]
        row.text = json.dumps({"canals": canals, "now": None}, sort_keys=True, separators=(",", ":"))
        row.save(update_fields=["text"])
    # PostgreSQL alters no table while checks of its rows are put off.
    schema_editor.connection.check_constraints()


class Migration(migrations.Migration):
    dependencies = [
        ("cases", "0006_markings"),
    ]

    operations = [
        migrations.RemoveIndex(
            model_name="runningwork",
            name="work_that_waits_first",
        ),
        migrations.AddField(
            model_name="runningwork",
            name="programme",
            field=models.ForeignKey(
                null=True, on_delete=django.db.models.deletion.CASCADE, related_name="+", to="cases.programme"
            ),
        ),
        migrations.AddField(
            model_name="runningwork",
            name="step_since",
            field=models.DateTimeField(help_text="Since when the present step is in hand.", null=True),
        ),
        migrations.AlterField(
            model_name="runningwork",
            name="text",
            field=models.TextField(help_text="The canals and the step in hand, as canonical JSON."),
        ),
        migrations.RunPython(fill, migrations.RunPython.noop),
        migrations.AlterField(
            model_name="runningwork",
            name="programme",
            field=models.ForeignKey(
                on_delete=django.db.models.deletion.CASCADE, related_name="+", to="cases.programme"
            ),
        ),
        migrations.AddIndex(
            model_name="runningwork",
            index=models.Index(
                condition=models.Q(("finished", False), ("waiting_since__isnull", False)),
                fields=["programme", "-halted", "waiting_since", "case"],
                name="work_that_waits_longest",
            ),
        ),
        migrations.AddIndex(
            model_name="runningwork",
            index=models.Index(
                condition=models.Q(("finished", False), ("waiting_since__isnull", True)),
                fields=["programme", "-changed_at", "case"],
                name="work_that_goes_on",
            ),
        ),
    ]
