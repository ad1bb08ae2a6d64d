from .formats.sniff import sniff as sniff
from .formats.take import Patch as Patch
from .health import HEADROOM as HEADROOM
from .health import Health as Health
from .health import assess as assess
from .health import near_ground as near_ground
from .load import Needs as Needs
from .load import anywhere as anywhere
from .load import read_file as read_file
from .load import read_scan as read_scan
from .load import read_triangles as read_triangles
from .load import scan_digest as scan_digest
from .placing.place import mark_place as mark_place
from .placing.place import resolve_area as resolve_area
from .placing.place import resolve_line as resolve_line
from .placing.place import resolve_point as resolve_point
from .placing.rounding import COARSE as COARSE
from .placing.rounding import rounded as rounded
from .placing.system import FAR as FAR
from .placing.system import System as System
from .placing.system import differ as differ
from .placing.system import from_degrees as from_degrees
from .placing.system import grid_over_ground as grid_over_ground
from .placing.system import named_system as named_system
from .records import Frame as Frame
from .records import Scan as Scan
from .records import Tie as Tie
from .registering.register import Fit as Fit
from .registering.register import Reference as Reference
from .registering.register import accuracy_95 as accuracy_95
from .registering.register import register as register
from .registering.repeats import fits_anywhere as fits_anywhere
from .registering.repeats import lay_on as lay_on
from .registering.repeats import refuse_other_system as refuse_other_system
from .registering.stations import disagreement as disagreement
from .remembered import Remembered as Remembered
from .remembered import remember as remember
from .remembered import remembered_of as remembered_of
from .sample import sample_faces as sample_faces
from .verdict import HOPELESS as HOPELESS
from .verdict import SYSTEMATIC as SYSTEMATIC
from .verdict import THIN as THIN
from .verdict import crest_rounding as crest_rounding
from .verdict import no_slab as no_slab
from .verdict import settles as settles

__all__ = [
    "COARSE",
    "FAR",
    "HEADROOM",
    "HOPELESS",
    "SYSTEMATIC",
    "THIN",
    "Fit",
    "Frame",
    "Health",
    "Needs",
    "Patch",
    "Reference",
    "Remembered",
    "Scan",
    "System",
    "Tie",
    "accuracy_95",
    "anywhere",
    "assess",
    "crest_rounding",
    "differ",
    "disagreement",
    "fits_anywhere",
    "from_degrees",
    "grid_over_ground",
    "lay_on",
    "mark_place",
    "named_system",
    "near_ground",
    "no_slab",
    "read_file",
    "read_scan",
    "read_triangles",
    "refuse_other_system",
    "register",
    "remember",
    "remembered_of",
    "resolve_area",
    "resolve_line",
    "resolve_point",
    "rounded",
    "sample_faces",
    "scan_digest",
    "settles",
    "sniff",
]
