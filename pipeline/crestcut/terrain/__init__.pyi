from .apart import judged_apart as judged_apart
from .build import NoSlab as NoSlab
from .build import build_surface as build_surface
from .build import measured_cells as measured_cells
from .doubts import Drive as Drive
from .doubts import doubts_of as doubts_of
from .doubts import driven as driven
from .doubts import up_settled as up_settled
from .doubts import up_words as up_words
from .error.covariance import HALF as HALF
from .error.covariance import between as between
from .error.covariance import matern32 as matern32
from .error.covariance import of_functionals as of_functionals
from .error.covariance import patch_half as patch_half
from .error.covariance import sums_of as sums_of
from .error.draws import FieldMaker as FieldMaker
from .error.draws import towards as towards
from .error.estimate import NOT_YET as NOT_YET
from .ground.ground import ground_points as ground_points
from .ground.ground import rollable_ground as rollable_ground
from .ground.ground import see_scan as see_scan
from .ground.raster import Lattice as Lattice
from .ground.raster import count_cells as count_cells
from .ground.raster import most_cells as most_cells
from .ground.raster import pitch_for as pitch_for
from .ground.seen import Layers as Layers
from .ground.seen import Seen as Seen
from .ground.seen import Thing as Thing
from .ground.seen_words import about as about
from .ground.seen_words import high as high
from .ground.seen_words import layers_words as layers_words
from .ground.seen_words import rough_words as rough_words
from .ground.seen_words import thing_words as thing_words
from .readings.condition import UNLIKELY as UNLIKELY
from .readings.condition import Conditioned as Conditioned
from .readings.condition import contradictions as contradictions
from .readings.condition import fold_in as fold_in
from .readings.condition import own_covariance as own_covariance
from .readings.evidence import SCAN_TILT as SCAN_TILT
from .readings.evidence import gather_evidence as gather_evidence
from .readings.records import Evidence as Evidence
from .readings.records import Reading as Reading
from .readings.records import joined as joined
from .records import Doubt as Doubt
from .records import DoubtKind as DoubtKind
from .records import ErrorModel as ErrorModel
from .records import Known as Known
from .records import Surface as Surface
from .slab.behind import FLOOR as FLOOR
from .slab.behind import slab_behind as slab_behind
from .slab.kept import narrow_part as narrow_part
from .slab.kept import sharp_of as sharp_of
from .slab.named import Feature as Feature
from .slab.shapes import Shape as Shape

__all__ = [
    "FLOOR",
    "HALF",
    "NOT_YET",
    "SCAN_TILT",
    "UNLIKELY",
    "Conditioned",
    "Doubt",
    "DoubtKind",
    "Drive",
    "ErrorModel",
    "Evidence",
    "Feature",
    "FieldMaker",
    "Known",
    "Lattice",
    "Layers",
    "NoSlab",
    "Reading",
    "Seen",
    "Shape",
    "Surface",
    "Thing",
    "about",
    "between",
    "build_surface",
    "contradictions",
    "count_cells",
    "doubts_of",
    "driven",
    "fold_in",
    "gather_evidence",
    "ground_points",
    "high",
    "joined",
    "judged_apart",
    "layers_words",
    "matern32",
    "measured_cells",
    "most_cells",
    "narrow_part",
    "of_functionals",
    "own_covariance",
    "patch_half",
    "pitch_for",
    "rollable_ground",
    "rough_words",
    "see_scan",
    "sharp_of",
    "slab_behind",
    "sums_of",
    "thing_words",
    "towards",
    "up_settled",
    "up_words",
]
