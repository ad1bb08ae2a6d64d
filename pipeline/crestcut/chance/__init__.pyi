from .active_contacts import ActiveContacts as ActiveContacts
from .active_contacts import evidence_points as evidence_points
from .active_contacts import find_active_contacts as find_active_contacts
from .active_contacts import ground_weights as ground_weights
from .active_contacts import wheel_weights as wheel_weights
from .against_all_points import doubted as doubted
from .against_all_points import in_the_way as in_the_way
from .against_all_points import second_look as second_look
from .against_all_points import under_the_tyres as under_the_tyres
from .assess import chance_of as chance_of
from .assess import chance_of_plan as chance_of_plan
from .assess import in_use_allowances as in_use_allowances
from .assess import in_words as in_words
from .assess import one_in as one_in
from .conditioned import given as given
from .conditioned import moved_vehicle as moved_vehicle
from .doubt_words import finding_head as finding_head
from .doubt_words import finding_step as finding_step
from .doubt_words import finding_words as finding_words
from .drawn_errors import DrawnErrors as DrawnErrors
from .draws import Draws as Draws
from .draws import draw_clearances as draw_clearances
from .draws import reach_of as reach_of
from .planned import CutDraws as CutDraws
from .planned import draw_cut as draw_cut
from .planned import margin_at_most as margin_at_most
from .planned import margin_for as margin_for
from .planned import smoothed_below as smoothed_below
from .records import Cause as Cause
from .records import Chance as Chance
from .records import Doubt as Doubt
from .records import Finding as Finding
from .records import Left as Left
from .whole_line import heard as heard
from .whole_line import heard_notes as heard_notes
from .witness import boards_add as boards_add
from .witness import witness_evidence as witness_evidence
from .words import IN_USE as IN_USE
from .words import WALKING as WALKING
from .words import left_lines as left_lines
from .words import left_words as left_words
from .words import state_words as state_words

__all__ = [
    "IN_USE",
    "WALKING",
    "ActiveContacts",
    "Cause",
    "Chance",
    "CutDraws",
    "Doubt",
    "DrawnErrors",
    "Draws",
    "Finding",
    "Left",
    "boards_add",
    "chance_of",
    "chance_of_plan",
    "doubted",
    "draw_clearances",
    "draw_cut",
    "evidence_points",
    "find_active_contacts",
    "finding_head",
    "finding_step",
    "finding_words",
    "given",
    "ground_weights",
    "heard",
    "heard_notes",
    "in_the_way",
    "in_use_allowances",
    "in_words",
    "left_lines",
    "left_words",
    "margin_at_most",
    "margin_for",
    "moved_vehicle",
    "one_in",
    "reach_of",
    "second_look",
    "smoothed_below",
    "state_words",
    "under_the_tyres",
    "wheel_weights",
    "witness_evidence",
]
