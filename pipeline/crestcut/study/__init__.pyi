from .by_hand import evidence_of as evidence_of
from .by_hand import keeps_of as keeps_of
from .by_hand import place_of as place_of
from .checks import ASPRS as ASPRS
from .checks import ASPRS_FEWEST as ASPRS_FEWEST
from .checks import NSSDA as NSSDA
from .checks import NSSDA_FEWEST as NSSDA_FEWEST
from .checks import Checks as Checks
from .checks import Errors as Errors
from .checks import nssda_radial as nssda_radial
from .checks import nssda_vertical as nssda_vertical
from .checks import with_survey as with_survey
from .identity import NOT_DATED as NOT_DATED
from .identity import NOTHING as NOTHING
from .identity import Identity as Identity
from .identity import code_digest as code_digest
from .identity import scan_identity as scan_identity
from .making import Clock as Clock
from .making import cast_again as cast_again
from .making import order_of as order_of
from .making import run_job as run_job
from .making import taken_up as taken_up
from .record import Study as Study
from .record import shown_part as shown_part
from .report import Report as Report
from .report import VehicleRow as VehicleRow
from .saved import STUDY_NAME as STUDY_NAME
from .saved import read_study as read_study
from .saved import write_study as write_study
from .stages import planned as planned

__all__ = [
    "ASPRS",
    "ASPRS_FEWEST",
    "NOTHING",
    "NOT_DATED",
    "NSSDA",
    "NSSDA_FEWEST",
    "STUDY_NAME",
    "Checks",
    "Clock",
    "Errors",
    "Identity",
    "Report",
    "Study",
    "VehicleRow",
    "cast_again",
    "code_digest",
    "evidence_of",
    "keeps_of",
    "nssda_radial",
    "nssda_vertical",
    "order_of",
    "place_of",
    "planned",
    "read_study",
    "run_job",
    "scan_identity",
    "shown_part",
    "taken_up",
    "with_survey",
    "write_study",
]
