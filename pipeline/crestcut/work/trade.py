"""The trade's own words, by country: common practice, no source. Keys of the job file stay as they are."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class TradeWords:
    """bay : a piece of slab between joints.  apron : the slope between road and yard.  station : distance
    along the line.
    edge : the corner line where two faces meet.  pond : water that stays.  walk : where people go on foot.
    """

    bay: str
    apron: str
    station: str
    edge: str
    edges: str
    pond: str
    ponds: str
    walk: str
    kerb: str


AMERICAN = TradeWords(
    "panel", "apron", "station", "edge", "edges", "birdbath", "birdbaths", "sidewalk", "curb"
)
BRITISH = TradeWords(
    "bay", "dropped kerb", "chainage", "arris", "arrises", "ponding", "ponds", "footway", "kerb"
)
AUSTRALIAN = TradeWords(
    "bay", "crossover", "chainage", "arris", "arrises", "ponding", "ponds", "footpath", "kerb"
)
PLAIN = TradeWords("bay", "apron", "station", "arris", "arrises", "pond", "ponds", "walk", "kerb")
BY_COUNTRY = {
    "US": AMERICAN, "CA": AMERICAN, "PR": AMERICAN, "GB": BRITISH, "UK": BRITISH, "IE": BRITISH,
    "AU": AUSTRALIAN, "NZ": AUSTRALIAN,
}  # fmt: skip
INCHES = ("US", "PR", "CA")  # where timber and tape are sold in inches


def trade_words(country: str | None) -> TradeWords:
    """The words of a country by its two letters (ISO 3166); plain ones where it is not known."""
    return BY_COUNTRY.get((country or "").upper(), PLAIN)
