from .clearance.along import runs as runs
from .clearance.blocks import Blocks as Blocks
from .clearance.blocks import blocks_of as blocks_of
from .clearance.blocks import layers_of as layers_of
from .clearance.blocks import untiled as untiled
from .clearance.kernels import EDGE as EDGE
from .clearance.kernels import FAR as FAR
from .clearance.kernels import SIDE as SIDE
from .clearance.kernels import Pairs as Pairs
from .clearance.kernels import Plates as Plates
from .clearance.pose_pairs import gaps_of_poses as gaps_of_poses
from .clearance.pose_pairs import lower_pairs as lower_pairs
from .clearance.pose_pairs import place_pairs as place_pairs
from .clearance.soft import SoftContact as SoftContact
from .clearance.soft import soft_contacts as soft_contacts
from .clearance.still_valid import Swept as Swept
from .clearance.sweep import FRAMES as FRAMES
from .clearance.sweep import hard_parts as hard_parts
from .clearance.sweep import on_the_line as on_the_line
from .clearance.sweep import plate_heights as plate_heights
from .clearance.sweep import plates_of as plates_of
from .clearance.sweep import sweep as sweep
from .clearance.sweep import wanted_gap as wanted_gap
from .path.files import DrawnLine as DrawnLine
from .path.files import read_line as read_line
from .path.line import DRAWN as DRAWN
from .path.line import is_straight as is_straight
from .path.line import travel_line as travel_line
from .path.line import window as window
from .records import WHEELS as WHEELS
from .records import Batch as Batch
from .records import Clearance as Clearance
from .records import Contact as Contact
from .records import Passage as Passage
from .records import Poses as Poses
from .records import Ride as Ride
from .records import TravelLine as TravelLine
from .stand.boards import THICKNESS as THICKNESS
from .stand.boards import bridging as bridging
from .stand.boards import stand_on as stand_on
from .stand.ground import contact_ground as contact_ground
from .stand.ground import over_small_holes as over_small_holes
from .stand.ground import ridden_ground as ridden_ground
from .stand.ride import axles_of as axles_of
from .stand.ride import places_of as places_of
from .stand.ride import ride as ride
from .stand.ride import settle_batch as settle_batch
from .stand.ride import wheel_feet as wheel_feet
from .stand.springs import stands_by_limits as stands_by_limits
from .stand.springs import support_weights as support_weights
from .stand.tyres import VOID as VOID
from .stand.tyres import settle_part as settle_part

__all__ = [
    "DRAWN",
    "EDGE",
    "FAR",
    "FRAMES",
    "SIDE",
    "THICKNESS",
    "VOID",
    "WHEELS",
    "Batch",
    "Blocks",
    "Clearance",
    "Contact",
    "DrawnLine",
    "Pairs",
    "Passage",
    "Plates",
    "Poses",
    "Ride",
    "SoftContact",
    "Swept",
    "TravelLine",
    "axles_of",
    "blocks_of",
    "bridging",
    "contact_ground",
    "gaps_of_poses",
    "hard_parts",
    "is_straight",
    "layers_of",
    "lower_pairs",
    "on_the_line",
    "over_small_holes",
    "place_pairs",
    "places_of",
    "plate_heights",
    "plates_of",
    "read_line",
    "ridden_ground",
    "ride",
    "runs",
    "settle_batch",
    "settle_part",
    "soft_contacts",
    "stand_on",
    "stands_by_limits",
    "support_weights",
    "sweep",
    "travel_line",
    "untiled",
    "wanted_gap",
    "wheel_feet",
    "window",
]
