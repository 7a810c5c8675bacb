import django.db.models.deletion
from django.conf import settings
from django.db import migrations, models

import cases.domain.uuid7


class Migration(migrations.Migration):
    dependencies = [
        ("cases", "0021_what_was_acknowledged"),
    ]

    operations = [
        migrations.CreateModel(
            name="Revocation",
            fields=[
                (
                    "id",
                    models.UUIDField(
                        default=cases.domain.uuid7.uuid7, editable=False, primary_key=True, serialize=False
                    ),
                ),
                ("sent_hash", models.CharField(editable=False, max_length=64)),
                ("asked", models.PositiveIntegerField(help_text="Which submission of the version had been approved.")),
                ("reason", models.TextField()),
                ("at", models.DateTimeField(auto_now_add=True)),
            ],
        ),
        migrations.RemoveConstraint(
            model_name="toothplanversion",
            name="version_state_known",
        ),
        migrations.RemoveConstraint(
            model_name="toothplanversion",
            name="version_decided_has_time",
        ),
        migrations.RemoveConstraint(
            model_name="toothplanversion",
            name="version_submitted_before_decided",
        ),
        migrations.RemoveConstraint(
            model_name="treatmentevent",
            name="event_kind_known",
        ),
        migrations.AlterField(
            model_name="toothplanversion",
            name="state",
            field=models.CharField(
                choices=[
                    ("draft", "draft"),
                    ("waiting", "waiting"),
                    ("approved", "approved"),
                    ("returned", "returned"),
                    ("revoked", "revoked"),
                    ("superseded", "superseded"),
                ],
                default="draft",
                max_length=10,
            ),
        ),
        migrations.AlterField(
            model_name="treatmentevent",
            name="kind",
            field=models.CharField(
                choices=[
                    ("step", "step"),
                    ("answer", "answer"),
                    ("reading", "reading"),
                    ("sign_off", "sign off"),
                    ("inspected", "inspected"),
                    ("turn", "turn"),
                    ("pause", "pause"),
                    ("emergency", "emergency"),
                    ("corrected", "corrected"),
                    ("resume", "resume"),
                    ("close", "close"),
                    ("reopen", "reopen"),
                    ("replan", "replan"),
                    ("revoked", "revoked"),
                    ("release", "release"),
                    ("ask", "ask"),
                    ("come", "come"),
                    ("wanted", "wanted"),
                    ("take_over", "take over"),
                    ("give_back", "give back"),
                    ("struck", "struck"),
                    ("on_site", "on site"),
                    ("dam", "dam"),
                    ("image", "image"),
                    ("irrigated", "irrigated"),
                    ("note", "note"),
                    ("undo", "undo"),
                ],
                max_length=9,
            ),
        ),
        migrations.AddConstraint(
            model_name="toothplanversion",
            constraint=models.CheckConstraint(
                condition=models.Q(
                    ("state__in", ["approved", "draft", "returned", "revoked", "superseded", "waiting"])
                ),
                name="version_state_known",
            ),
        ),
        migrations.AddConstraint(
            model_name="toothplanversion",
            constraint=models.CheckConstraint(
                condition=models.Q(
                    models.Q(("state__in", ["waiting", "approved", "returned", "revoked"]), _negated=True),
                    models.Q(("asked__gte", 1), ("submitted_at__isnull", False)),
                    ("carried_from__isnull", False),
                    _connector="OR",
                ),
                name="version_submitted_before_decided",
            ),
        ),
        migrations.AddConstraint(
            model_name="toothplanversion",
            constraint=models.CheckConstraint(
                condition=models.Q(
                    models.Q(("state__in", ["approved", "returned", "revoked"]), _negated=True),
                    ("decided_at__isnull", False),
                    _connector="OR",
                ),
                name="version_decided_has_time",
            ),
        ),
        migrations.AddConstraint(
            model_name="treatmentevent",
            constraint=models.CheckConstraint(
                condition=models.Q(
                    (
                        "kind__in",
                        [
                            "answer",
                            "ask",
                            "close",
                            "come",
                            "corrected",
                            "dam",
                            "emergency",
                            "give_back",
                            "image",
                            "inspected",
                            "irrigated",
                            "note",
                            "on_site",
                            "pause",
                            "reading",
                            "release",
                            "reopen",
                            "replan",
                            "resume",
                            "revoked",
                            "sign_off",
                            "step",
                            "struck",
                            "take_over",
                            "turn",
                            "undo",
                            "wanted",
                        ],
                    )
                ),
                name="event_kind_known",
            ),
        ),
        migrations.AddField(
            model_name="revocation",
            name="actor",
            field=models.ForeignKey(
                on_delete=django.db.models.deletion.PROTECT, related_name="+", to=settings.AUTH_USER_MODEL
            ),
        ),
        migrations.AddField(
            model_name="revocation",
            name="version",
            field=models.ForeignKey(
                on_delete=django.db.models.deletion.PROTECT, related_name="revocations", to="cases.toothplanversion"
            ),
        ),
        migrations.AddConstraint(
            model_name="revocation",
            constraint=models.UniqueConstraint(fields=("version", "asked"), name="revoked_once_per_asking"),
        ),
        migrations.AddConstraint(
            model_name="revocation",
            constraint=models.CheckConstraint(
                condition=models.Q(("reason", ""), _negated=True), name="revocation_has_a_reason"
            ),
        ),
    ]
