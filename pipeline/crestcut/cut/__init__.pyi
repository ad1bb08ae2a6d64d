from .area import inside as inside
from .bay import THICK as THICK
from .bay import bay_of as bay_of
from .bay import bay_words as bay_words
from .bay import why_a_new_bay as why_a_new_bay
from .feather import feather_in as feather_in
from .feather import feather_out as feather_out
from .fleet import FleetPlan as FleetPlan
from .fleet import Member as Member
from .fleet import depth_for_fleet as depth_for_fleet
from .fleet import plan_fleet as plan_fleet
from .fleet import refuse_one_name as refuse_one_name
from .limits import KeepArea as KeepArea
from .limits import cut_limits as cut_limits
from .plan import CUT as CUT
from .plan import ENOUGH as ENOUGH
from .plan import cut_surface as cut_surface
from .plan import ride_on as ride_on
from .problem import Problem as Problem
from .problem import prepare as prepare
from .ray_casting import DIFFERS as DIFFERS
from .ray_casting import Gap as Gap
from .ray_casting import Judged as Judged
from .ray_casting import NotCast as NotCast
from .ray_casting import RayCast as RayCast
from .ray_casting import contradiction as contradiction
from .ray_casting import load_caster as load_caster
from .ray_casting import ray_cast as ray_cast
from .records import CutPlan as CutPlan
from .records import Drain as Drain
from .records import Facet as Facet
from .records import Guided as Guided
from .records import Limits as Limits
from .ruled_out import HAZARDS as HAZARDS
from .ruled_out import UNLOCATED as UNLOCATED
from .ruled_out import Forbids as Forbids
from .ruled_out import forbidden as forbidden
from .ruled_out import kept as kept
from .ruled_out import not_into_it as not_into_it
from .ruled_out import not_known as not_known
from .slab_limits import CAREFUL_SHARE as CAREFUL_SHARE
from .slab_limits import DEFAULT_DEEPEST as DEFAULT_DEEPEST
from .slab_limits import REFUSED_SHARE as REFUSED_SHARE
from .slab_limits import asks_drilling as asks_drilling
from .slab_limits import deepest_allowed as deepest_allowed
from .slab_limits import mass_of as mass_of
from .slab_limits import steel_depth as steel_depth
from .slab_limits import stop_rules as stop_rules
from .solver import solve as solve

__all__ = [
    "CAREFUL_SHARE",
    "CUT",
    "DEFAULT_DEEPEST",
    "DIFFERS",
    "ENOUGH",
    "HAZARDS",
    "REFUSED_SHARE",
    "THICK",
    "UNLOCATED",
    "CutPlan",
    "Drain",
    "Facet",
    "FleetPlan",
    "Forbids",
    "Gap",
    "Guided",
    "Judged",
    "KeepArea",
    "Limits",
    "Member",
    "NotCast",
    "Problem",
    "RayCast",
    "asks_drilling",
    "bay_of",
    "bay_words",
    "contradiction",
    "cut_limits",
    "cut_surface",
    "deepest_allowed",
    "depth_for_fleet",
    "feather_in",
    "feather_out",
    "forbidden",
    "inside",
    "kept",
    "load_caster",
    "mass_of",
    "not_into_it",
    "not_known",
    "plan_fleet",
    "prepare",
    "ray_cast",
    "refuse_one_name",
    "ride_on",
    "solve",
    "steel_depth",
    "stop_rules",
    "why_a_new_bay",
]
