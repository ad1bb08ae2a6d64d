from .by_hand import against_scan as against_scan
from .by_hand import agree_by_hand as agree_by_hand
from .by_hand import agreeing as agreeing
from .by_hand import cut_by_hand as cut_by_hand
from .by_hand import foretold as foretold
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
from .now import withdrawn as withdrawn
from .records import Check as Check
from .records import Edge as Edge
from .records import Fight as Fight
from .records import Now as Now
from .records import Odd as Odd
from .records import Predicted as Predicted
from .records import Share as Share
from .records import Told as Told
from .records import TooDeep as TooDeep
from .register_after import Laid as Laid
from .register_after import lay_after as lay_after
from .removed import Removed as Removed
from .removed import removed_between as removed_between
from .removed import speaks_against as speaks_against
from .removed import work_area as work_area
from .rest import ground_now as ground_now
from .rest import pass_of as pass_of
from .rest import rest_of as rest_of
from .rest import short_of as short_of
from .rest import still_to_go as still_to_go

__all__ = [
    "Check",
    "Edge",
    "Fight",
    "Laid",
    "Now",
    "Odd",
    "Predicted",
    "Removed",
    "Share",
    "Told",
    "TooDeep",
    "against_scan",
    "agree_by_hand",
    "agreeing",
    "all_now",
    "cut_by_hand",
    "edges_left",
    "finished_behind",
    "foretold",
    "ground_now",
    "lay_after",
    "likely_shares",
    "mixed",
    "new_ponds",
    "pass_of",
    "removed_between",
    "rest_of",
    "short_of",
    "speaks_against",
    "still_to_go",
    "told_by",
    "too_deep",
    "what_to_measure",
    "withdrawn",
    "work_area",
    "worked",
]
