from .options import options_table as options_table
from .rows import Answer as Answer
from .rows import Estimator as Estimator
from .rows import Option as Option
from .trials import bench as bench

__all__ = ["Answer", "Estimator", "Option", "bench", "options_table"]
