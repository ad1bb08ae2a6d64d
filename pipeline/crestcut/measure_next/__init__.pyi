from .advice import KINDS as KINDS
from .advice import Advice as Advice
from .advice import measure_first as measure_first
from .touch import CARD as CARD

__all__ = ["CARD", "KINDS", "Advice", "measure_first"]
