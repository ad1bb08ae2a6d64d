from .identity import NOT_DATED as NOT_DATED
from .identity import NOTHING as NOTHING
from .identity import Identity as Identity
from .identity import scan_identity as scan_identity
from .making import Clock as Clock
from .making import cast_again as cast_again
from .making import evidence_of as evidence_of
from .making import keeps_of as keeps_of
from .making import run_job as run_job
from .making import taken_up as taken_up
from .record import Study as Study
from .report import Report as Report
from .report import VehicleRow as VehicleRow
from .saved import STUDY_NAME as STUDY_NAME
from .saved import write_study as write_study
from .stages import planned as planned

__all__ = [
    "NOTHING",
    "NOT_DATED",
    "STUDY_NAME",
    "Clock",
    "Identity",
    "Report",
    "Study",
    "VehicleRow",
    "cast_again",
    "evidence_of",
    "keeps_of",
    "planned",
    "run_job",
    "scan_identity",
    "taken_up",
    "write_study",
]
