"""Rasters survive the way into the page and out again."""

from __future__ import annotations

import base64
import json
import zlib

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from crestcut.report.pages.pack import pack_colours, pack_layer, pack_numbers, unpack_layer
from crestcut.report.pages.shell import TEMPLATES
from crestcut.report.view.result import plain

heights = arrays(
    np.float64,
    st.tuples(st.integers(1, 9), st.integers(1, 9)),
    elements=st.one_of(st.floats(-40, 40), st.just(np.nan)),
)


@settings(max_examples=150, deadline=None)
@given(heights)
def test_layers_come_back_within_half_a_step_and_holes_stay_holes(values: np.ndarray) -> None:
    layer = pack_layer(values, 1e-4)
    back = unpack_layer(json.loads(json.dumps(layer)), values.shape)
    assert (np.isnan(back) == np.isnan(values)).all()
    known = ~np.isnan(values)
    assert (np.abs(back - values)[known] <= layer["step"] / 2 + 1e-9).all()


def test_usual_range_keeps_the_step_asked_for_and_a_tall_one_says_its_own() -> None:
    assert pack_layer(np.array([[0.0, 3.0]]), 1e-4)["step"] == 1e-4
    assert pack_layer(np.array([[0.0, 100.0]]), 1e-4)["step"] == pytest.approx(100 / 65534)


def test_all_holes() -> None:
    assert np.isnan(unpack_layer(pack_layer(np.full((3, 4), np.nan)), (3, 4))).all()


def test_colours_keep_their_upper_bits() -> None:
    rgb = np.random.default_rng(1).integers(0, 256, (7, 5, 3)).astype(np.uint8)
    planes = np.frombuffer(zlib.decompress(base64.b64decode(pack_colours(rgb))), np.uint8).reshape(3, -1)
    back = np.cumsum(planes, axis=1, dtype=np.uint8).T.reshape(rgb.shape)
    assert (np.abs(back.astype(int) - rgb) <= 4).all()


def test_numbers_are_float32() -> None:
    back = np.frombuffer(zlib.decompress(base64.b64decode(pack_numbers([1.5, -2.25]))), "<f4")
    assert back.tolist() == [1.5, -2.25]


NASTY = "</script><script>alert(1)</script><!-- & \u2028 \u2029 שלום"


def json_for_script(value: object) -> str:
    """As the pages carry what their viewer reads."""
    return TEMPLATES.from_string("{{ value | tojson }}").render(value=value)


def test_json_cannot_leave_its_script_element() -> None:
    text = json_for_script({"title": NASTY})
    assert not set("<>&\u2028\u2029") & set(text)
    assert json.loads(text)["title"] == NASTY


def test_not_measured_is_null_never_nan() -> None:
    assert plain({"a": (float("nan"), np.float64("inf"), np.int64(3))}) == {"a": [None, None, 3]}
    with pytest.raises(ValueError):
        json_for_script(float("nan"))
