import django.db.models.deletion
from django.db import migrations, models
from django.db.models import OuterRef, Subquery


def fill(apps, schema_editor):
    """Each version's programme is its case's."""
    versions, cases = apps.get_model("cases", "ToothPlanVersion"), apps.get_model("cases", "Case")
    programme = cases.objects.filter(pk=OuterRef("case")).values("programme")
    versions.objects.update(programme=Subquery(programme))
    # PostgreSQL alters no table while checks of its rows are put off.
    schema_editor.connection.check_constraints()


class Migration(migrations.Migration):
    dependencies = [
        ("cases", "0011_notifications"),
    ]

    operations = [
        migrations.RemoveIndex(
            model_name="toothplanversion",
            name="version_waiting_longest",
        ),
        migrations.AddField(
            model_name="toothplanversion",
            name="programme",
            field=models.ForeignKey(
                null=True, on_delete=django.db.models.deletion.PROTECT, related_name="+", to="cases.programme"
            ),
        ),
        migrations.RunPython(fill, migrations.RunPython.noop),
        migrations.AlterField(
            model_name="toothplanversion",
            name="programme",
            field=models.ForeignKey(
                on_delete=django.db.models.deletion.PROTECT, related_name="+", to="cases.programme"
            ),
        ),
        migrations.AddIndex(
            model_name="toothplanversion",
            index=models.Index(
                condition=models.Q(("state", "waiting")),
                fields=["programme", "-stops", "-cautions", "submitted_at", "id"],
                name="plans_that_wait",
            ),
        ),
    ]
