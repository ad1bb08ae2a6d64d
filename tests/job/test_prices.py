"""Prices as they are written, each fault one line, and what a job costs by them to the last hundredth."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import numpy as np
import pytest

from crestcut.job.answers import Per
from crestcut.job.load import load_job
from crestcut.job.prices import Price, Prices, Spent, cost
from crestcut.job.records import Job
from one_line import refusal

JOB = """
[scan]
files = ["slab.laz"]
[vehicle]
file = "car.toml"
[travel]
line = [[0.5, 2.0], [14.5, 2.0]]
[prices]
"""
WHOLE = """currency = "Thaler"
labour = "45 per hour"
disposal = "0.65 per litre"
day = "6 h"
hire = { wet_saw = "38.50 per day" }
blades = { wet_saw = "120 per set" }
other = { "travel, there and back" = "30 per job" }
"""


def written(folder: Path, prices: str) -> Path:
    path = folder / "job.toml"
    path.write_text(JOB + prices)
    return path


def test_prices_are_read_with_their_units(tmp_path: Path) -> None:
    job: Job = load_job(written(tmp_path, WHOLE))
    assert job.prices == Prices(
        "Thaler", Price(45.0, Per.HOUR), Price(0.65, Per.LITRE), 6.0, (("wet_saw", Price(38.5, Per.DAY)),),
        (("wet_saw", Price(120.0, Per.SET)),), (("travel, there and back", Price(30.0, Per.JOB)),),
    )  # fmt: skip


def test_nothing_is_assumed_where_nothing_is_written(tmp_path: Path) -> None:
    path = tmp_path / "plain.toml"
    path.write_text(JOB.replace("[prices]\n", ""))
    assert load_job(path).prices is None


@pytest.mark.parametrize(
    ("prices", "what"),
    [
        ('currency = "EUR"\nlabour = "45"', '"45" has no unit'),
        ('currency = "EUR"\nlabour = 45', "45 has no unit"),
        ('currency = "EUR"\nlabour = "-4 per hour"', "below zero"),
        ('currency = "EUR"\nlabour = "much per hour"', "no price"),
        ('currency = "EUR"\nlabour = "nan per hour"', "no price"),
        ('currency = "EUR"\nlabour = nan', "nan"),
        ('currency = "EUR"\nlabour = true', "no price"),
        ('currency = "EUR"\nlabour = "45,50 per hour"', "decimal comma"),
        ('currency = "EUR"\nlabour = "45 per day"', "no such price here per day"),
        ('currency = "EUR"\nother = { travel = "30" }', "has no unit"),
        ('currency = "EUR"\nhire = { wet_saw = "40 per day" }', "no day's hours"),
        ('currency = "EUR"\nday = "25 h"\nlabour = "45 per hour"', "no day's work"),
        ('currency = "EUR"', "no price is there"),
        ('labour = "45 per hour"', "no currency"),
        ('currency = "a long way of saying it"\nlabour = "45 per hour"', "more than 12 characters"),
        ('currency = "EUR"\nlabor = "45 per hour"', 'did you mean "labour"?'),
    ],
)
def test_a_price_that_is_none_is_one_line(tmp_path: Path, prices: str, what: str) -> None:
    error = refusal(load_job, written(tmp_path, prices))
    assert what in str(error) and "prices" in error.where and error.mend


def test_what_a_job_costs_is_what_a_pencil_makes_of_the_printed_figures(tmp_path: Path) -> None:
    """By hand: 8.2 h to 21.4 h at 45; 10.5 to 11.5 litres at 0.65 (6.825: up to 6.83); two begun days to four
    at 38.50; 0.05 to 0.21 of a set at 120; 30 once."""
    prices = load_job(written(tmp_path, WHOLE)).prices
    assert prices is not None
    tools = (("wet_saw", "wet saw", (0.05, 0.21)), ("cup", "cup", (0.1, 0.2)))
    found = cost(prices, Spent((8.2, 21.4), (10.5, 11.5), (25.2, 27.6), (2.0, 3.0), tools))
    assert [(x.least, x.most) for x in found.lines] == [
        (369.00, 963.00), (6.83, 7.48), (77.00, 154.00), (6.00, 25.20), (30.00, 30.00)
    ]  # fmt: skip
    assert (found.least, found.most) == (488.83, 1179.68)
    assert found.unpriced == ("wear of the cup",)


@pytest.mark.parametrize(
    ("per", "least", "most"), [(Per.LITRE, 21.00, 23.00), (Per.KG, 50.40, 55.20), (Per.BAG, 4.00, 6.00)]
)
def test_disposal_is_paid_by_what_its_price_is_per(per: Per, least: float, most: float) -> None:
    """10.5 to 11.5 litres, 25.2 to 27.6 kg, two to three bags, each at two."""
    prices = Prices("X", disposal=Price(2.0, per))
    (line,) = cost(prices, Spent((8.2, 21.4), (10.5, 11.5), (25.2, 27.6), (2.0, 3.0))).lines
    assert (line.least, line.most) == (least, most)


def test_sums_add_up_as_printed() -> None:
    """Whatever the prices: the total printed is the sum of the lines printed."""
    rng = np.random.default_rng(0)
    for _ in range(300):
        rates = [Price(float(np.round(rng.uniform(0, 900), rng.integers(0, 5))), Per.HOUR) for _ in range(2)]
        prices = Prices("X", rates[0], Price(rates[1].amount, Per.BAG), 7.0, other=(("a", rates[1]),))
        low, high = sorted(np.round(rng.uniform(0, 60, 2), 1).tolist())
        found = cost(prices, Spent((low, high), bags=(1.0, 7.0)))
        for end in ("least", "most"):
            lines = sum(Decimal(f"{getattr(x, end):.2f}") for x in found.lines)
            assert Decimal(f"{getattr(found, end):.2f}") == lines
        assert found.least <= found.most


def test_a_day_that_is_begun_is_a_day() -> None:
    prices = Prices("X", day=2.1, hire=(("saw", Price(10.0, Per.DAY)),))
    found = cost(prices, Spent((8.4, 8.5), tools=(("saw", "saw", (0.0, 0.0)),)))
    assert found.lines[0].amount == (4.0, 5.0)  # 8.4 / 2.1 is four and not a little more
