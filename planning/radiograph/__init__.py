"""What marks on an image measure: how large a pixel is, how long a canal, how it bends, how sure each of these is.

values       what goes in and what comes out
scale        from what is known of the image to millimetres per pixel, and what that rests on
line         a curve through marks: its length, and the place at a distance along it
touch        how far a finger was off at a mark
spread       how sure a number is, by how far the finger slips
bend         the circle through marks, and Schneider's angle
two_bends    the pairs of bends that are possible by the marks of a canal
bends        the bend of a line as it is told, or both of a double one
doubts       marks that are asked about
views        two views of one root: buccal or lingual, the angle in space
at_once      the figures by which a phone says by itself how sure it is
measuring    the front door
"""

from planning.radiograph.at_once import MarkFigures, mark_figures
from planning.radiograph.bends import charted_deg
from planning.radiograph.measuring import measure
from planning.radiograph.scale import scale_of
from planning.radiograph.values import ImageMarks, Measured

__all__ = ["ImageMarks", "MarkFigures", "Measured", "charted_deg", "mark_figures", "measure", "scale_of"]
