from .advice import KINDS as KINDS
from .advice import Advice as Advice
from .advice import measure_first as measure_first
from .strings import BLOCKS_PLACED as BLOCKS_PLACED
from .touch import CARD as CARD

__all__ = ["BLOCKS_PLACED", "CARD", "KINDS", "Advice", "measure_first"]
