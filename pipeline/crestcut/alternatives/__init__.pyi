from .options import options_table as options_table
from .rows import Answer as Answer
from .rows import Option as Option
from .rows import Sure as Sure
from .trials import bench as bench

__all__ = ["Answer", "Option", "Sure", "bench", "options_table"]
