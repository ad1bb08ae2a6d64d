from .by_hand import agreeing as agreeing
from .by_hand import likely_shares as likely_shares
from .by_hand import told_by as told_by
from .by_hand import worked as worked
from .edges import edges_left as edges_left
from .edges import new_ponds as new_ponds
from .edges import too_deep as too_deep
from .finished import finished_behind as finished_behind
from .now import all_now as all_now
from .now import mixed as mixed
from .now import what_to_measure as what_to_measure
from .records import Check as Check
from .records import Edge as Edge
from .records import Fight as Fight
from .records import Now as Now
from .records import Share as Share
from .records import Told as Told
from .records import TooDeep as TooDeep
from .register_after import Laid as Laid
from .register_after import lay_after as lay_after
from .removed import Removed as Removed
from .removed import removed_between as removed_between
from .removed import work_area as work_area

__all__ = [
    "Check",
    "Edge",
    "Fight",
    "Laid",
    "Now",
    "Removed",
    "Share",
    "Told",
    "TooDeep",
    "agreeing",
    "all_now",
    "edges_left",
    "finished_behind",
    "lay_after",
    "likely_shares",
    "mixed",
    "new_ponds",
    "removed_between",
    "told_by",
    "too_deep",
    "what_to_measure",
    "work_area",
    "worked",
]
