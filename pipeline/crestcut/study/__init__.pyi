from .identity import NOT_DATED as NOT_DATED
from .identity import NOTHING as NOTHING
from .identity import Identity as Identity
from .identity import scan_identity as scan_identity
from .record import Study as Study
from .report import PlacedKeep as PlacedKeep
from .report import PlacedMark as PlacedMark
from .report import Report as Report
from .report import VehicleRow as VehicleRow

__all__ = [
    "NOTHING",
    "NOT_DATED",
    "Identity",
    "PlacedKeep",
    "PlacedMark",
    "Report",
    "Study",
    "VehicleRow",
    "scan_identity",
]
