"""What an endodontic plan is computed from, and how. No framework, no clock, no network: values in, values out.

From the ground up, each known to those after it:

    foundation     lengths as whole micrometres, figures with their sources, bounds, refusals, JSON
    anatomy        teeth and canals as they are found: names, usual canals, published widths, bends, thin walls, ovals
    instruments    instruments by ISO 3630-1, and what bending does to them
    lengths        readings of a canal's length, and the working length that follows
    run_sheet      the order of work of one canal as a finite graph, and walking it; the phone walks the same
    radiograph     what marks on an image measure, and how sure each number is
    techniques     techniques as data: phases, what makes one unusable, reading one from text
    contract       the two ends as frozen values: what a plan is computed from, and what it says
    tray           which instruments are used, what is laid out, in which order they are taken up
    canal          one canal: where it ends, how wide before and after, how large it may be made, how it is filled
    depth          how deep each instrument is expected to go, how sure that is, what was felt
    work           one canal's order of work, what is withheld, where to start in mid-course, what it all comes to
    whole_tooth    refusals, all canals, cautions, rationales: the front door
    api            the same over HTTP, without tables
"""

from planning.contract.plan_input import Choices, Kit, PlanInput
from planning.contract.plan_value import Plan
from planning.foundation.errors import PlanningError
from planning.foundation.version import VERSION
from planning.instruments.iso_3630 import Instrument
from planning.lengths.readings import Length, Reading
from planning.lengths.working_length import LengthContext, settle
from planning.techniques.files import provided_techniques
from planning.techniques.technique import Technique
from planning.whole_tooth.plan import plan

__version__ = VERSION

__all__ = [
    "Choices",
    "Instrument",
    "Kit",
    "Length",
    "LengthContext",
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
