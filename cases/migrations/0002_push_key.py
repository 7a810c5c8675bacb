"""The key of notifications, made once where the database is first set up."""

from django.db import migrations

from cases.services.people import push


def make(apps, schema_editor):
    push_key = apps.get_model("cases", "PushKey")
    if not push_key.objects.exists():
        push_key.objects.create(pk=1, private_pem=push.new_key())


class Migration(migrations.Migration):
    dependencies = [
        ("cases", "0001_initial"),
    ]

    operations = [
        migrations.RunPython(make, migrations.RunPython.noop),
    ]
