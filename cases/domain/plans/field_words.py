"""What every field of a plan's input is called for people, and what it bears on.

A field that is in neither of the two tables fails a test; so does an entry for a field that is gone.
"""

from __future__ import annotations

from planning.contract.canal_facts import Bears, CanalFacts, Fact, WallInput, WidthInput
from planning.contract.plan_input import CanalInput
from planning.foundation.bounds import noted

DEPTH, SAFETY, SHAPE, MEANS, PROGRESS = Bears

_POINT, _FLARED, _BY = "reference point", "after coronal flaring", "method"

LABELS: dict[str, tuple[str, Bears]] = {
    # What is charted of a canal says so itself.
    **{
        f"{kind.__name__}.{name}": (fact.label, fact.bears_on)
        for kind in (CanalInput, CanalFacts, WallInput, WidthInput)
        for name, fact in noted(kind, Fact).items()
    },
    # The tooth as a whole.
    "PlanInput.tooth": ("tooth", SAFETY),
    "PlanInput.setting": ("setting", SAFETY),
    "PlanInput.canals": ("canals", DEPTH),
    "PlanInput.kit": ("kit", MEANS),
    "PlanInput.technique": ("technique", MEANS),
    "PlanInput.choices": ("choices", SHAPE),
    "PlanInput.roots": ("roots", SHAPE),
    "PlanInput.isolated": ("dam in place and tight", SAFETY),
    "PlanInput.root_filled": ("has a root filling", SAFETY),
    "PlanInput.perforation": ("has a perforation", SAFETY),
    "PlanInput.anatomy": ("anatomy", SAFETY),
    "PlanInput.thresholds": ("figure of the programme", SAFETY),
    "PlanInput.factors": ("what makes the case difficult", SAFETY),
    "PlanInput.overrides": ("let pass by a supervisor", SAFETY),
    "PlanInput.samples": ("canals drawn for the bands", PROGRESS),
    "RootInput.name": ("root", SHAPE),
    "RootInput.pattern": ("how its canals run", SHAPE),
    "RootInput.main_canal": ("its main canal", DEPTH),
    "Override.code": ("caution", SAFETY),
    "Override.canal": ("canal", SAFETY),
    "Override.reason": ("reason", SAFETY),
    "Override.final_size": ("final size chosen by a supervisor", SHAPE),
    # One canal.
    "CanalInput.name": ("canal", DEPTH),
    "CanalInput.root": ("root", SHAPE),
    "CanalInput.reference_point": (_POINT, DEPTH),
    "CanalInput.readings": ("reading", DEPTH),
    "CanalInput.junction": ("where it joins", DEPTH),
    "CanalInput.bend_shape": ("bends to both sides", SHAPE),
    "CanalInput.felt": ("depth felt", PROGRESS),
    "CanalInput.progress": ("work so far", PROGRESS),
    "Junction.from_terminus_mm": ("from the common end", DEPTH),
    "Junction.method": (_BY, DEPTH),
    "Junction.at_length_mm": ("measured at a length of", DEPTH),
    # Readings.
    "PreOperativeImage.tooth_mm": ("tooth length", DEPTH),
    "PreOperativeImage.reference_point": (_POINT, DEPTH),
    "PreOperativeImage.after_flaring": (_FLARED, DEPTH),
    "PreOperativeImage.interval": ("how sure its marks are", DEPTH),
    "Ratio.interval": ("how sure its marks are", DEPTH),
    "ConfirmingImage.interval": ("how sure its marks are", DEPTH),
    "ImageInterval.least_mm": ("at least, by its marks", DEPTH),
    "ImageInterval.most_mm": ("at most, by its marks", DEPTH),
    "ImageInterval.rests_on": ("what the image's scale rests on", DEPTH),
    "Ratio.instrument_mm": ("instrument", DEPTH),
    "Ratio.instrument_on_image_mm": ("instrument on the image", DEPTH),
    "Ratio.tooth_on_image_mm": ("tooth on the image", DEPTH),
    "Ratio.reference_point": (_POINT, DEPTH),
    "Ratio.after_flaring": (_FLARED, DEPTH),
    "ConfirmingImage.set_mm": ("stop that was set", DEPTH),
    "ConfirmingImage.tip_short_mm": ("tip short of the apex", DEPTH),
    "ConfirmingImage.reference_point": (_POINT, DEPTH),
    "ConfirmingImage.after_flaring": (_FLARED, DEPTH),
    "ApexLocator.read_mm": ("read", DEPTH),
    "ApexLocator.repeat_mm": ("read again", DEPTH),
    "ApexLocator.mark": ("at the mark", DEPTH),
    "ApexLocator.reference_point": (_POINT, DEPTH),
    "ApexLocator.stable": ("display held still", DEPTH),
    "ApexLocator.after_flaring": (_FLARED, DEPTH),
    "DirectSight.seen_mm": ("seen at", DEPTH),
    "DirectSight.reference_point": (_POINT, DEPTH),
    "DirectSight.after_flaring": (_FLARED, DEPTH),
    # Choices.
    "Choices.needle": ("needle", SAFETY),
    "Choices.irrigant": ("irrigant", SAFETY),
    "Choices.final_rinse": ("final rinse", SAFETY),
    "Choices.series_taper": ("taper of the series", SHAPE),
    "Choices.glide_path_to_size": ("glide path up to size", SHAPE),
    "Choices.canals": ("choice for the canal", SHAPE),
    "CanalChoice.canal": ("canal", SHAPE),
    "CanalChoice.final_size": ("final size chosen", SHAPE),
    "CanalChoice.reason": ("reason for the size", SHAPE),
    "Needle.gauge": ("gauge", SAFETY),
    "Needle.tip": ("tip", SAFETY),
    # The kit.
    "Kit.name": ("kit", MEANS),
    "Kit.instruments": ("instrument of the kit", MEANS),
    "Kit.needles": ("needle of the kit", MEANS),
    "Kit.filling": ("cones, pluggers and spreaders", MEANS),
    "Instrument.size": ("size", MEANS),
    "Instrument.taper": ("taper", MEANS),
    "Instrument.motion": ("motion", MEANS),
    "Instrument.use": ("kept for", MEANS),
    "Instrument.length_mm": ("length", DEPTH),
    "Instrument.cutting_part_mm": ("cutting part", SHAPE),
    "Instrument.largest_flute_mm": ("largest flute", SHAPE),
    "Instrument.speed_rpm": ("speed", SAFETY),
    "Instrument.torque_ncm": ("torque", SAFETY),
    "Instrument.diameters": ("diameter", SHAPE),
    "Instrument.uses": ("times used", PROGRESS),
    "Instrument.most_uses": ("uses at most", SAFETY),
    "DiameterAt.from_tip_mm": ("from the tip", SHAPE),
    "DiameterAt.diameter_mm": ("diameter", SHAPE),
    "FillingItem.kind": ("kind", MEANS),
    "FillingItem.size": ("size", MEANS),
    "FillingItem.taper": ("taper", MEANS),
    # The technique.
    "Technique.key": ("technique", MEANS),
    "Technique.name": ("technique's name", MEANS),
    "Technique.says": ("what it is", MEANS),
    "Technique.source": ("where it is from", MEANS),
    "Technique.know": ("how it is known", MEANS),
    "Technique.motions": ("motions it is for", MEANS),
    "Technique.recapitulate_size": ("recapitulating size", MEANS),
    "Technique.recapitulate_with_final": ("recapitulates with the final size", MEANS),
    "Technique.series_above_glide_path": ("sizes from glide path to series", MEANS),
    "Technique.series_sizes_up": ("sizes in the series above its smallest", MEANS),
    "Technique.phases": ("phase", MEANS),
    "Phase.key": ("key", MEANS),
    "Phase.title": ("title", MEANS),
    "Phase.kind": ("kind", MEANS),
    "Phase.why": ("why", MEANS),
    "Phase.settings": ("settings", MEANS),
    "Phase.from_size": ("from size", MEANS),
    "Phase.to_size": ("to size", MEANS),
    "Phase.to_estimate": ("works to the estimated length", DEPTH),
    "Phase.repeat_from": ("begins again from", MEANS),
    "Phase.most_passes": ("passes at most", MEANS),
    "Phase.expected_passes": ("passes expected", MEANS),
    "Phase.steps": ("steps", MEANS),
    "Phase.step_mm": ("each step shorter by", DEPTH),
    "Phase.hold_point": ("hold point", SAFETY),
    "Phase.hold_point_in": ("settings with its hold point", SAFETY),
    "Phase.image": ("asks for an image", SAFETY),
    # How far the work has come.
    "RecordedDepth.node": ("step", PROGRESS),
    "RecordedDepth.depth_mm": ("felt at", PROGRESS),
    "RecordedDepth.stop_mm": ("worked to the stop", PROGRESS),
    "Progress.at": ("step that is due", PROGRESS),
    "Progress.phase": ("phase it stands in", PROGRESS),
    "Progress.over": ("that phase is over", PROGRESS),
    "Progress.walked_before": ("steps walked", PROGRESS),
    "Progress.length_mm": ("length signed off", DEPTH),
    "Progress.made": ("insertion", PROGRESS),
    "Walked.passes": ("times come to", PROGRESS),
    "Walked.depths_um": ("depths reached", PROGRESS),
    "PastInsertion.step": ("step", PROGRESS),
    "PastInsertion.phase": ("phase", PROGRESS),
    "PastInsertion.instrument": ("instrument", PROGRESS),
    "PastInsertion.depth_mm": ("to", PROGRESS),
    "PastInsertion.stop_mm": ("worked to the stop", PROGRESS),
    "PastInsertion.to_resistance": ("led in to resistance", PROGRESS),
}

NOT_TOLD: dict[str, str] = {
    "PlanInput.seed": "picks which canals are drawn and is the case's own: two versions of one case never differ in it",
    "PlanInput.schema_version": "there is one version",
    "Technique.schema_version": "says how the file was written; what it says is told field by field",
    "PreOperativeImage.method": "tells one kind of reading from another, which come and go as a whole",
    "Ratio.method": "as above",
    "ConfirmingImage.method": "as above",
    "ApexLocator.method": "as above",
    "DirectSight.method": "as above",
}
"""Fields that are rightly not told, each with why."""

UNITS = {"mm": "mm", "um": "mm", "deg": "°", "rpm": "/min", "ncm": "N·cm"}
"""By the end of the field's name, as people write them; thousandths are told in millimetres."""
