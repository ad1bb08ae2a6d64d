from .asked import asked_first as asked_first
from .asked import board_sizes as board_sizes
from .asked import row_of as row_of
from .cards import HIT_CARDS as HIT_CARDS
from .cards import WORK_CARDS as WORK_CARDS
from .cards import cautions as cautions
from .costs import ranked as ranked
from .drain import drain_words as drain_words
from .drain_plan import drained as drained
from .dust import dust_lines as dust_lines
from .dust import mask_words as mask_words
from .floor_jig import EVEN as EVEN
from .floor_jig import make_floor_jig as make_floor_jig
from .ground_records import Pond as Pond
from .ground_records import Water as Water
from .guided_plan import check_work as check_work
from .guided_plan import guided as guided
from .guided_plan import guided_words as guided_words
from .jig_records import STICK_INCHES as STICK_INCHES
from .jig_records import FloorJig as FloorJig
from .jig_records import Jig as Jig
from .jig_records import JigRow as JigRow
from .jig_records import Rails as Rails
from .jig_records import Range as Range
from .jig_records import Spot as Spot
from .jig_records import Ties as Ties
from .jig_records import Tool as Tool
from .jig_records import stick_words as stick_words
from .limit_texts import limit_lines as limit_lines
from .limit_texts import section_left as section_left
from .method import Amount as Amount
from .method import Chosen as Chosen
from .method import choose_method as choose_method
from .order import WorkOrder as WorkOrder
from .order import make_site as make_site
from .passes import Step as Step
from .passes import numbered as numbered
from .quantities import BAG as BAG
from .quantities import bags_words as bags_words
from .quantities import hours_of as hours_of
from .quantities import hours_words as hours_words
from .quantities import span_words as span_words
from .quantities import spent_of as spent_of
from .quantities import wear_words as wear_words
from .quantities import work_out as work_out
from .records import IDLE as IDLE
from .records import NO_ANSWER_HELPS as NO_ANSWER_HELPS
from .records import TYRES as TYRES
from .records import BoardsUnder as BoardsUnder
from .records import Dot as Dot
from .records import Measure as Measure
from .records import Pass as Pass
from .records import Quantities as Quantities
from .records import ReadingSpot as ReadingSpot
from .records import Reason as Reason
from .records import ReasonCode as ReasonCode
from .records import Release as Release
from .records import ReleaseState as ReleaseState
from .records import SetOut as SetOut
from .records import Silica as Silica
from .records import StringRow as StringRow
from .records import Worksheet as Worksheet
from .release import decide_release as decide_release
from .setout import dots_of as dots_of
from .sheet import make_worksheet as make_worksheet
from .site import Site as Site
from .site import cuts_along as cuts_along
from .slopes import VERTICAL as VERTICAL
from .slopes import edge_rule as edge_rule
from .ties import AT_MARK as AT_MARK
from .ties import with_heights as with_heights
from .timber import Stock as Stock
from .timber import stock_of as stock_of
from .tools import tool_files as tool_files
from .tools import tools_at_hand as tools_at_hand
from .trade import INCHES as INCHES
from .trade import TradeWords as TradeWords
from .trade import trade_words as trade_words
from .water import POND_CELL as POND_CELL
from .water import ponds as ponds
from .workable import SKIN as SKIN

__all__ = [
    "AT_MARK",
    "BAG",
    "EVEN",
    "HIT_CARDS",
    "IDLE",
    "INCHES",
    "NO_ANSWER_HELPS",
    "POND_CELL",
    "SKIN",
    "STICK_INCHES",
    "TYRES",
    "VERTICAL",
    "WORK_CARDS",
    "Amount",
    "BoardsUnder",
    "Chosen",
    "Dot",
    "FloorJig",
    "Jig",
    "JigRow",
    "Measure",
    "Pass",
    "Pond",
    "Quantities",
    "Rails",
    "Range",
    "ReadingSpot",
    "Reason",
    "ReasonCode",
    "Release",
    "ReleaseState",
    "SetOut",
    "Silica",
    "Site",
    "Spot",
    "Step",
    "Stock",
    "StringRow",
    "Ties",
    "Tool",
    "TradeWords",
    "Water",
    "WorkOrder",
    "Worksheet",
    "asked_first",
    "bags_words",
    "board_sizes",
    "cautions",
    "check_work",
    "choose_method",
    "cuts_along",
    "decide_release",
    "dots_of",
    "drain_words",
    "drained",
    "dust_lines",
    "edge_rule",
    "guided",
    "guided_words",
    "hours_of",
    "hours_words",
    "limit_lines",
    "make_floor_jig",
    "make_site",
    "make_worksheet",
    "mask_words",
    "numbered",
    "ponds",
    "ranked",
    "row_of",
    "section_left",
    "span_words",
    "spent_of",
    "stick_words",
    "stock_of",
    "tool_files",
    "tools_at_hand",
    "trade_words",
    "wear_words",
    "with_heights",
    "work_out",
]
