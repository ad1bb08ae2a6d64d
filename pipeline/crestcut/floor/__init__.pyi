from .assess import judge_floor as judge_floor
from .by_hand import tilt_of as tilt_of
from .classes import BS_CLASSES as BS_CLASSES
from .classes import BS_LENGTH as BS_LENGTH
from .classes import LOCAL_SHARE as LOCAL_SHARE
from .classes import aci_class as aci_class
from .classes import bs_class as bs_class
from .classes import din_gap as din_gap
from .place import doubted_floor as doubted_floor
from .place import floor_findings as floor_findings
from .place import floor_frame as floor_frame
from .place import floor_nodes as floor_nodes
from .place import floor_only as floor_only
from .records import Figure as Figure
from .records import FloorDoubt as FloorDoubt
from .records import FloorFinding as FloorFinding
from .records import Judged as Judged
from .records import Levelling as Levelling
from .records import Spot as Spot
from .work import FloorSheet as FloorSheet
from .work import SpotJig as SpotJig
from .work import lifts_of as lifts_of
from .work import make_floor_sheet as make_floor_sheet
from .work import not_alone as not_alone
from .work import worth as worth

__all__ = [
    "BS_CLASSES",
    "BS_LENGTH",
    "LOCAL_SHARE",
    "Figure",
    "FloorDoubt",
    "FloorFinding",
    "FloorSheet",
    "Judged",
    "Levelling",
    "Spot",
    "SpotJig",
    "aci_class",
    "bs_class",
    "din_gap",
    "doubted_floor",
    "floor_findings",
    "floor_frame",
    "floor_nodes",
    "floor_only",
    "judge_floor",
    "lifts_of",
    "make_floor_sheet",
    "not_alone",
    "tilt_of",
    "worth",
]
