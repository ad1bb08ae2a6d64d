from .apps.run import write_job as write_job
from .job.load import load_job as load_job
from .scan.load import read_scan as read_scan
from .study.making import run_job as run_job
from .study.record import Study as Study
from .study.report import Report as Report
from .study.saved import read_study as read_study
from .study.saved import write_study as write_study
from .vehicle.load import load_vehicle as load_vehicle

__version__: str
__all__ = [
    "Report",
    "Study",
    "load_job",
    "load_vehicle",
    "read_scan",
    "read_study",
    "run_job",
    "write_job",
    "write_study",
]
