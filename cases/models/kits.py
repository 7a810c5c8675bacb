"""What a programme works with: instruments, needles, techniques of its own, figures of its own."""

from __future__ import annotations

from django.db import models
from django.db.models import F, Q

from cases.models.base import HASH_LENGTH, KEY, ClientCreated, Identified, Listed, choices, one_of
from cases.models.people import Programme
from planning.instruments.iso_3630 import Motion, Use

NEEDLE_TIPS = ("open", "side_vented")
FILLING_KINDS = ("cone", "plugger", "spreader")


class Kit(Listed, ClientCreated):
    """A set of instruments, needles and what fills. Plans take a copy of it, so a later change never touches a plan."""

    programme = models.ForeignKey(Programme, on_delete=models.PROTECT, related_name="kits")
    name = models.CharField(max_length=80)
    created_at = models.DateTimeField(auto_now_add=True)

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["programme", "name"], name="kit_name_unique"),
            models.CheckConstraint(condition=~Q(name=""), name="kit_has_name"),
        ]

    def __str__(self) -> str:
        return self.name


class KitInstrument(models.Model):
    """One instrument. Speed and torque are typed in by the programme from the maker's instructions."""

    kit = models.ForeignKey(Kit, on_delete=models.CASCADE, related_name="instruments")
    size = models.PositiveSmallIntegerField(help_text="Tip in hundredths of a millimetre (ISO 3630-1).")
    taper = models.PositiveSmallIntegerField(help_text="Hundredths of a millimetre per millimetre.")
    motion = models.CharField(max_length=14, choices=choices(Motion))
    use = models.CharField(max_length=8, choices=choices(Use))
    length_um = models.PositiveIntegerField()
    cutting_part_um = models.PositiveIntegerField()
    largest_flute_um = models.PositiveIntegerField(null=True, blank=True)
    speed_rpm = models.PositiveIntegerField(null=True, blank=True)
    torque_ncm = models.FloatField(null=True, blank=True)
    diameters_text = models.TextField(
        blank=True, help_text="JSON of the diameters from the tip upwards, of a variable taper."
    )
    uses = models.PositiveIntegerField(default=0, help_text="Canals it has been used in.")
    most_uses = models.PositiveIntegerField(null=True, blank=True)

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["kit", "size", "taper", "motion"], name="kit_instrument_unique"),
            models.CheckConstraint(condition=Q(size__gt=0), name="instrument_size_above_0"),
            models.CheckConstraint(
                condition=Q(cutting_part_um__gt=0, cutting_part_um__lte=F("length_um")),
                name="instrument_cutting_part_fits",
            ),
            models.CheckConstraint(
                condition=Q(largest_flute_um__isnull=True) | Q(largest_flute_um__gte=F("size") * 10),
                name="instrument_flute_not_below_tip",
            ),
            models.CheckConstraint(
                condition=Q(torque_ncm__isnull=True) | Q(torque_ncm__gt=0), name="instrument_torque_above_0"
            ),
            models.CheckConstraint(
                condition=Q(most_uses__isnull=True) | Q(most_uses__gte=1), name="instrument_used_once_at_least"
            ),
            models.CheckConstraint(condition=one_of("motion", Motion), name="instrument_motion_known"),
            models.CheckConstraint(condition=one_of("use", Use), name="instrument_use_known"),
        ]

    def __str__(self) -> str:
        return f"{self.size:02d}/.{self.taper:02d} {self.motion}"


class KitNeedle(models.Model):
    """An irrigation needle."""

    kit = models.ForeignKey(Kit, on_delete=models.CASCADE, related_name="needles")
    gauge = models.PositiveSmallIntegerField()
    tip = models.CharField(max_length=11, choices=[(tip, tip.replace("_", "-")) for tip in NEEDLE_TIPS])

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["kit", "gauge", "tip"], name="kit_needle_unique"),
            models.CheckConstraint(condition=one_of("tip", NEEDLE_TIPS), name="needle_tip_known"),
        ]

    def __str__(self) -> str:
        return f"{self.gauge} G, {self.tip}"


class KitFilling(models.Model):
    """A cone, plugger or spreader."""

    kit = models.ForeignKey(Kit, on_delete=models.CASCADE, related_name="filling")
    kind = models.CharField(max_length=8, choices=[(kind, kind) for kind in FILLING_KINDS])
    size = models.PositiveSmallIntegerField(help_text="Tip in hundredths of a millimetre.")
    taper = models.PositiveSmallIntegerField(help_text="Hundredths of a millimetre per millimetre.")

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["kit", "kind", "size", "taper"], name="kit_filling_unique"),
            models.CheckConstraint(condition=one_of("kind", FILLING_KINDS), name="filling_kind_known"),
            models.CheckConstraint(condition=Q(size__gt=0), name="filling_size_above_0"),
        ]

    def __str__(self) -> str:
        return f"{self.kind} {self.size:02d}/.{self.taper:02d}"


class TechniqueRecord(ClientCreated):
    """A technique of the programme's own; those provided with the planner have no row. The text is the truth."""

    programme = models.ForeignKey(Programme, on_delete=models.PROTECT, related_name="techniques")
    key = models.CharField(max_length=60, validators=[KEY])
    text = models.TextField(help_text="JSON of one technique, as the planner reads it.")
    text_hash = models.CharField(max_length=HASH_LENGTH)
    created_at = models.DateTimeField(auto_now_add=True)

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["programme", "key"], name="technique_key_unique"),
            models.CheckConstraint(condition=~Q(text=""), name="technique_has_text"),
        ]

    def __str__(self) -> str:
        return self.key


class ProgrammeWidths(Identified):
    """How wide a canal is taken to be in the programme, in place of the published widths."""

    programme = models.ForeignKey(Programme, on_delete=models.PROTECT, related_name="widths")
    tooth = models.CharField(max_length=2, help_text="ISO 3950 of the right side; stands for the left one too.")
    canal = models.CharField(max_length=12)
    text = models.TextField(help_text="JSON of the widths from the end upwards.")

    class Meta:
        verbose_name_plural = "programme widths"
        constraints = [
            models.UniqueConstraint(fields=["programme", "tooth", "canal"], name="programme_widths_unique"),
            models.CheckConstraint(condition=~Q(text=""), name="programme_widths_have_text"),
        ]

    def __str__(self) -> str:
        return f"{self.tooth} {self.canal}"


class ThresholdOverride(Identified):
    """A figure of the programme's own, in place of one of the planner's tables."""

    programme = models.ForeignKey(Programme, on_delete=models.PROTECT, related_name="thresholds")
    key = models.CharField(max_length=60)
    value = models.FloatField()

    class Meta:
        constraints = [models.UniqueConstraint(fields=["programme", "key"], name="threshold_key_unique")]

    def __str__(self) -> str:
        return f"{self.key} = {self.value:g}"
