from .angles import Angles as Angles
from .angles import PartAngle as PartAngle
from .angles import derive_angles as derive_angles
from .angles import tangent_angle as tangent_angle
from .load import load_vehicle as load_vehicle
from .load import vehicle_from as vehicle_from
from .load_states import load_state as load_state
from .loads import NEAR_BREAK as NEAR_BREAK
from .loads import elastic_tyre as elastic_tyre
from .loads import in_use_table as in_use_table
from .plausible import RANGES as RANGES
from .plausible import RULES as RULES
from .records import AS_MEASURED as AS_MEASURED
from .records import LoadState as LoadState
from .records import Part as Part
from .records import Vehicle as Vehicle
from .sheet.fill_in import blank_sheet as blank_sheet
from .sheet.fill_in import measuring_sheet as measuring_sheet
from .sheet.items import CAUTIONS as CAUTIONS
from .sheet.items import ITEMS as ITEMS
from .sheet.items import LOADED as LOADED
from .sheet.items import LOW_PARTS as LOW_PARTS
from .sheet.items import OPTIONAL as OPTIONAL
from .sheet.items import PART_ITEMS as PART_ITEMS
from .sheet.items import STEPS as STEPS
from .sheet.read_back import is_sheet as is_sheet
from .sheet.read_back import sheet_from as sheet_from
from .sheet.vehicle import measured_vehicle as measured_vehicle
from .springs import check_carries as check_carries
from .tracks import refuse_parts_over_tracks as refuse_parts_over_tracks

__all__ = [
    "AS_MEASURED",
    "CAUTIONS",
    "ITEMS",
    "LOADED",
    "LOW_PARTS",
    "NEAR_BREAK",
    "OPTIONAL",
    "PART_ITEMS",
    "RANGES",
    "RULES",
    "STEPS",
    "Angles",
    "LoadState",
    "Part",
    "PartAngle",
    "Vehicle",
    "blank_sheet",
    "check_carries",
    "derive_angles",
    "elastic_tyre",
    "in_use_table",
    "is_sheet",
    "load_state",
    "load_vehicle",
    "measured_vehicle",
    "measuring_sheet",
    "refuse_parts_over_tracks",
    "sheet_from",
    "tangent_angle",
    "vehicle_from",
]
