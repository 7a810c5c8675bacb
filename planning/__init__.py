"""What an endodontic plan is computed from, and how. No framework, no clock, no network: values in, values out.

A map, from the ground up (each may use what stands above it):

    errors, quantities   refusals with a path into the input; lengths as whole micrometres
    tables, data/        every figure of the trade with its source; thresholds of a programme in their place
    encoding             the one way from values to JSON and back
    teeth, instruments   names, usual canals, published lengths; sizes, colours, diameters
    readings, lengths    what was measured, and the working length that follows
    techniques           phases as data; technique_files reads and checks them
    plan_input, graph, plan_value    the values at the two ends
    irrigation, apical_size, profile, joins, selection    one rule each
    at_the_chair    first steps, what to look for and contact times, brought along by every plan
    curvature, strain, walls, ovals    plane geometry of a bent, oval, thin-walled root
    radiograph    marks on an image: scale, length along the curve, bend, two views, each with how sure it is
    natural    a canal before anything has been in it
    run_sheet, phases, held, blocked, joined, walk    the order of work as a finite graph, what canals wait for
    begun, mid_course          how far work had come, and the order of work from there
    depth      how deep each instrument is expected to go on that walk, how sure that is, what was felt
    gauging, shaped, final_size, filling    what a shape means: first to bind, bend, wall, choices, cones, volumes
    kit_sizes    which final sizes a kit can make
    canal, canal_work, outcome, canal_plan    one canal: what is known of it, how it is worked, what that walk comes to,
                         its part of the plan
    asked_for, stages    at which points a supervisor and an image are asked for, and how often
    tray       fewest changes of instrument over all canals, exactly
    layout, cautions, caution_rules, difficulty_rules, refusals    the other parts
    why, whys            the reason of every number a plan shows
    plan                 the front door
    bands, last_depth    what is expected of the rest once work has begun; how the last depth lies in it
    api                  the same over HTTP, without tables
"""

from planning.contract.plan_input import Choices, Kit, PlanInput
from planning.contract.plan_value import Plan
from planning.foundation.errors import PlanningError
from planning.foundation.version import VERSION
from planning.instruments.iso_3630 import Instrument
from planning.lengths.readings import Length, Reading
from planning.lengths.working_length import About, settle
from planning.techniques.files import provided as provided_techniques
from planning.techniques.technique import Technique
from planning.whole_tooth.plan import plan

__version__ = VERSION

__all__ = [
    "About",
    "Choices",
    "Instrument",
    "Kit",
    "Length",
    "Plan",
    "PlanInput",
    "PlanningError",
    "Reading",
    "Technique",
    "__version__",
    "plan",
    "provided_techniques",
    "settle",
]
