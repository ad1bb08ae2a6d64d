from .apps.run import write_job as write_job
from .base.errors import CrestcutError as CrestcutError
from .contact.clearance.sweep import sweep as sweep
from .contact.path.line import travel_line as travel_line
from .contact.records import Passage as Passage
from .contact.stand.ride import ride as ride
from .cut.limits import KeepArea as KeepArea
from .job.load import load_job as load_job
from .job.records import CutWish as CutWish
from .job.records import Job as Job
from .job.records import ScanChoice as ScanChoice
from .job.records import Settings as Settings
from .job.records import Slab as Slab
from .job.records import Travel as Travel
from .job.records import Wanted as Wanted
from .scan.load import read_scan as read_scan
from .study.making import run_job as run_job
from .study.record import Study as Study
from .study.report import Report as Report
from .study.saved import read_study as read_study
from .study.saved import write_study as write_study
from .study.stages import assess as assess
from .study.stages import assess_after as assess_after
from .study.stages import drive as drive
from .study.stages import fit_surface as fit_surface
from .study.stages import plan as plan
from .vehicle.load import load_vehicle as load_vehicle
from .vehicle.load_states import load_state as load_state

__version__: str
__all__ = [
    "CrestcutError",
    "CutWish",
    "Job",
    "KeepArea",
    "Passage",
    "Report",
    "ScanChoice",
    "Settings",
    "Slab",
    "Study",
    "Travel",
    "Wanted",
    "assess",
    "assess_after",
    "drive",
    "fit_surface",
    "load_job",
    "load_state",
    "load_vehicle",
    "plan",
    "read_scan",
    "read_study",
    "ride",
    "run_job",
    "sweep",
    "travel_line",
    "write_job",
    "write_study",
]
