from .answers import NOBODY as NOBODY
from .answers import SETTLED_BY as SETTLED_BY
from .answers import Asked as Asked
from .answers import InSlab as InSlab
from .answers import Method as Method
from .answers import Over as Over
from .answers import Per as Per
from .answers import Permit as Permit
from .answers import SlabKind as SlabKind
from .answers import Source as Source
from .answers import YesNo as YesNo
from .answers import settled as settled
from .answers import who_can_know as who_can_know
from .convert import beside as beside
from .convert import resolved as resolved
from .faults import as_one_line as as_one_line
from .faults import did_you_mean as did_you_mean
from .fields import Between as Between
from .fields import FileName as FileName
from .fields import Length as Length
from .fields import Table as Table
from .fields import Text as Text
from .fields import Unit as Unit
from .fields import UpAxis as UpAxis
from .fields import fault as fault
from .floor_records import FloorJob as FloorJob
from .floor_records import FloorWish as FloorWish
from .floor_schema import load_floor_job as load_floor_job
from .load import line_of as line_of
from .load import lines_in as lines_in
from .load import load_job as load_job
from .load import words_in as words_in
from .plot_schema import wished as wished
from .prices import CostLine as CostLine
from .prices import Prices as Prices
from .prices import Spent as Spent
from .prices import cost as cost
from .prices import days_of as days_of
from .records import NOISE as NOISE
from .records import After as After
from .records import ByHand as ByHand
from .records import CutWish as CutWish
from .records import GridPoint as GridPoint
from .records import Job as Job
from .records import Keep as Keep
from .records import LevelReading as LevelReading
from .records import Mark as Mark
from .records import MarkName as MarkName
from .records import PlanPoint as PlanPoint
from .records import PlotWish as PlotWish
from .records import Point as Point
from .records import ScanChoice as ScanChoice
from .records import Settings as Settings
from .records import Site as Site
from .records import Slab as Slab
from .records import StringReading as StringReading
from .records import Surveyed as Surveyed
from .records import TapeTies as TapeTies
from .records import Travel as Travel
from .records import VehicleChoice as VehicleChoice
from .records import Wanted as Wanted
from .records import Witness as Witness
from .records import WorkWish as WorkWish
from .schema import what_may_be_written as what_may_be_written
from .toml_file import read_toml as read_toml

__all__ = [
    "NOBODY",
    "NOISE",
    "SETTLED_BY",
    "After",
    "Asked",
    "Between",
    "ByHand",
    "CostLine",
    "CutWish",
    "FileName",
    "FloorJob",
    "FloorWish",
    "GridPoint",
    "InSlab",
    "Job",
    "Keep",
    "Length",
    "LevelReading",
    "Mark",
    "MarkName",
    "Method",
    "Over",
    "Per",
    "Permit",
    "PlanPoint",
    "PlotWish",
    "Point",
    "Prices",
    "ScanChoice",
    "Settings",
    "Site",
    "Slab",
    "SlabKind",
    "Source",
    "Spent",
    "StringReading",
    "Surveyed",
    "Table",
    "TapeTies",
    "Text",
    "Travel",
    "Unit",
    "UpAxis",
    "VehicleChoice",
    "Wanted",
    "Witness",
    "WorkWish",
    "YesNo",
    "as_one_line",
    "beside",
    "cost",
    "days_of",
    "did_you_mean",
    "fault",
    "line_of",
    "lines_in",
    "load_floor_job",
    "load_job",
    "read_toml",
    "resolved",
    "settled",
    "what_may_be_written",
    "who_can_know",
    "wished",
    "words_in",
]
