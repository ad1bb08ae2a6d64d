from .identity import NOT_DATED as NOT_DATED
from .identity import NOTHING as NOTHING
from .identity import Identity as Identity
from .identity import scan_identity as scan_identity
from .record import Study as Study
from .report import PlacedKeep as PlacedKeep
from .report import PlacedMark as PlacedMark
from .report import Report as Report
from .report import VehicleRow as VehicleRow
from .saved import STUDY_NAME as STUDY_NAME
from .saved import differing as differing
from .saved import read_study as read_study
from .saved import write_study as write_study

__all__ = [
    "NOTHING",
    "NOT_DATED",
    "STUDY_NAME",
    "Identity",
    "PlacedKeep",
    "PlacedMark",
    "Report",
    "Study",
    "VehicleRow",
    "differing",
    "read_study",
    "scan_identity",
    "write_study",
]
