"""Scan -> Surface: what is ground, how high it is at every node, and how wrong that may be."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from scipy import ndimage

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import BoolArray, FloatArray, GridFrame, HeightGrid, IntArray
from crestcut.job import Settings
from crestcut.scan import Scan
from crestcut.terrain.breaklines.breaks import breaks_of
from crestcut.terrain.breaklines.crests import smooth_crests
from crestcut.terrain.breaklines.ridges import PILOT, BreakPoints, find_knots, spacing, sparse_pilot
from crestcut.terrain.error.estimate import estimate_error
from crestcut.terrain.ground.ground import AS_USUAL, Ground, find_ground
from crestcut.terrain.ground.raster import Cells, Lattice, sum_cells
from crestcut.terrain.heights.blend import blend
from crestcut.terrain.heights.local import CellMeans, Local, fit_local, windows
from crestcut.terrain.heights.plain import fit_plain
from crestcut.terrain.joints.find import Joints, find_joints
from crestcut.terrain.records import ErrorModel, Surface

FEWEST = 50  # ground points: below this nothing is claimed
JOINTS = "in joints that a tyre rides over"


class NoSlab(CrestcutError):
    """Hardly anything of a slab lies in the window that was looked at."""


def build_surface(
    scan: Scan,
    frame: GridFrame,
    scanner: str | None = None,
    error: ErrorModel | None = None,
    settings: Settings = AS_USUAL,
) -> Surface:
    """The ground inside ``frame``: heights, what may be rolled on and cut, standard error, and what was
    taken away.

    Cells farther from a ground point than a few point spacings stay NaN. Raises CrestcutError where too few
    points lie inside.
    """
    lattice = Lattice.around(frame)
    placed = lattice.place(scan.points)
    ground = find_ground(lattice, placed, settings)
    used = int(ground.keep.sum())
    if used < FEWEST:
        raise NoSlab(
            f"only {used} ground points where the vehicle goes",
            "[travel] line",
            f"scan the slab there, or move the line: the scan reaches {_reach(scan)}",
        )
    if ground.twice is not None:
        raise CrestcutError(
            f"the scan shows the slab twice, {ground.twice * 1000:.0f} mm apart: two passes do not agree",
            "",
            "give each pass as a file of its own under [scan] files, or one pass alone",
        )
    cells = sum_cells(lattice, placed, ground.keep)
    mask = measured_cells(cells.points, lattice.pitch)
    means = level_means(cells, mask, lattice.pitch, ground.noise)
    ground, cells, means, joints = without_joints(lattice, placed, ground, cells, means, settings)
    pilot = sparse_pilot(means)
    inflation = shared_noise(means, pilot)
    plain = fit_plain(means, inflation)
    knots = find_knots(cells, pilot, lattice.pitch, ground.noise * ground.noise * inflation)
    used = int(cells.points.sum())
    del cells, pilot  # layers of the whole lattice, of a long lane 20 MB each
    crests = smooth_crests(knots, means, inflation)
    height, se, excess = blend(knots, crests, plain, means)
    del crests, means
    se = joints.widened(se, plain.choice, lattice.pitch)
    grid = HeightGrid(frame, lattice.nodes(height))
    measured = grid.measured
    model = error or estimate_error(scan, grid, scanner)
    notes = (_mesh_note(scan, knots), _joint_note(joints))
    return Surface(
        height=grid,
        top=grid.like(highest_in_cell(lattice, height, excess)),
        standard_error=grid.like(lattice.nodes(se)),
        rollable=measured & lattice.nodes(ground.rollable),
        slab=measured & lattice.nodes(ground.slab),
        error=model,
        removed=(*ground.removed, *((JOINTS, joints.left_out),) * (joints.left_out > 0)),
        points_used=used,
        notes=tuple(n for n in notes if n),
        breaks=breaks_of(knots, lattice.pitch, lattice.pad),
        seen=ground.seen,
        joints=joints.ends - lattice.pad * lattice.pitch,
    )


def _reach(scan: Scan) -> str:
    """From where to where the scan goes, in its own coordinates: a line far off is often in other ones."""
    corners = scan.frame.site_to_plan(
        np.array([scan.all_over[:, :2].min(axis=0), scan.all_over[:, :2].max(axis=0)])
    )
    low, high = corners.min(axis=0), corners.max(axis=0)
    return f"from x {low[0]:.1f} to {high[0]:.1f} and y {low[1]:.1f} to {high[1]:.1f} {scan.frame.unit}"


def measured_cells(count: FloatArray | IntArray, pitch: float) -> BoolArray:
    """Cells that may carry a height: occupied ones, and gaps between them that a random thinning of the
    points explains.

    A closing with a disk: gaps up to two reaches wide are spanned, the outline is not moved outwards.
    """
    occupied = count > 0
    per_cell = float(np.median(count[occupied])) if occupied.any() else 0.0
    covered = ndimage.binary_closing(occupied, iterations=3)
    density = count.sum() / max(covered.sum(), 1) / pitch**2 if per_cell else 1.0
    # a disk of radius r is empty by chance with probability exp(-density pi r^2): once in 3 million here
    reach = float(np.clip(np.sqrt(15 / (np.pi * density)), 1.5 * pitch, 0.06))
    pad = int(np.ceil(reach / pitch)) + 1
    y, x = np.mgrid[-pad : pad + 1, -pad : pad + 1]
    closed = ndimage.binary_closing(np.pad(occupied, 2 * pad), np.hypot(x, y) * pitch <= reach)
    return closed[2 * pad : -2 * pad, 2 * pad : -2 * pad] | occupied


def level_means(cells: Cells, mask: BoolArray, pitch: float, noise: float) -> CellMeans:
    """Mean heights moved along the local slope from where the points lie to the cell's centre."""
    half, raw = max(2, round(PILOT / pitch)), CellMeans(cells.points, cells.z, mask, pitch, noise)
    every, z = max(1, half // 5), np.empty(mask.shape)
    for where, own, part in windows(raw, every):
        slope = fit_local(part, half, beta=True, every=every).beta[:, own, :2]
        slope = np.nan_to_num(slope) / half  # m per cell
        du, dv = cells.du[:, where], cells.dv[:, where]
        z[:, where] = cells.z[:, where] - slope[..., 0] * du - slope[..., 1] * dv
    return replace(raw, z=z)


def without_joints(
    lattice: Lattice, placed: FloatArray, ground: Ground, cells: Cells, means: CellMeans, settings: Settings
) -> tuple[Ground, Cells, CellMeans, Joints]:
    """Ground, cells and levelled means with the points of joints raised or left out, and what was done."""
    joints = find_joints(means, placed, ground.keep, settings)
    if not joints.any:
        return ground, cells, means, joints
    raised, keep = joints.settled(placed, ground.keep)
    # sunk points tilt the planes from which a few strays beside a joint are told; where points are so few
    # that one stray moves a window of 0.32 m by more than 0.05 mm, ground is told again
    density = cells.points.sum() / (max(means.mask.sum(), 1) * lattice.pitch**2)
    if len(joints.strips) and settings.far * ground.noise > 0.05e-3 * 0.06 * density:
        ground = find_ground(lattice, raised, settings)
        keep = joints.settled(placed, ground.keep)[1] & ground.keep
    cells = sum_cells(lattice, raised, keep)
    cells = Cells(*(np.where(joints.groove, 0.0, a) for a in cells))
    ground = replace(ground, keep=keep)
    return ground, cells, level_means(cells, means.mask, lattice.pitch, ground.noise), joints


def highest_in_cell(lattice: Lattice, height: FloatArray, excess: FloatArray) -> FloatArray:
    """Node heights raised by the largest rise of the surface inside the node's cell over the bilinear
    surface of the nodes, m.

    ``height`` and ``excess`` (over the lattice's own bilinear surface) per lattice cell.
    """
    k, ny, nx = lattice.steps, *lattice.frame.shape
    nodes = lattice.nodes(height)
    if k == 1:
        return nodes + np.maximum(lattice.nodes(excess), 0.0)
    coarse = np.full(height.shape, np.nan)
    j = np.clip((np.arange(height.shape[0]) - lattice.pad) / k, 0, ny - 1)
    i = np.clip((np.arange(height.shape[1]) - lattice.pad) / k, 0, nx - 1)
    j0, i0 = np.minimum(j.astype(int), max(ny - 2, 0)), np.minimum(i.astype(int), max(nx - 2, 0))
    b, a = (j - j0)[:, None], (i - i0)[None, :]
    j1, i1 = np.minimum(j0 + 1, ny - 1), np.minimum(i0 + 1, nx - 1)
    coarse = (1 - b) * ((1 - a) * nodes[np.ix_(j0, i0)] + a * nodes[np.ix_(j0, i1)]) + b * (
        (1 - a) * nodes[np.ix_(j1, i0)] + a * nodes[np.ix_(j1, i1)]
    )
    over = np.nan_to_num(height + excess - coarse, nan=0.0)
    return nodes + lattice.nodes(ndimage.maximum_filter(np.maximum(over, 0.0), 2 * (k // 2) + 1))


def shared_noise(means: CellMeans, pilot: Local) -> float:
    """By how much the mean of 5 cm of points scatters more than their own noise says: what neighbours
    share, as a factor >= 1.

    Squared mean residuals about the pilot times their counts over the variance of one point: the median, over
    that of chi square with one degree of freedom (0.455), so that crests and edges do not count.
    """
    half, k = pilot.half, spacing(means.pitch)
    ny, nx = (n // k * k for n in means.count.shape)
    base, slopes = (
        pilot.z[k // 2 : ny : k, k // 2 : nx : k],
        pilot.beta[k // 2 : ny : k, k // 2 : nx : k, :2] / half,
    )
    count = means.count[:ny, :nx].reshape(ny // k, k, nx // k, k)
    offset = np.arange(k) - k // 2
    flat = means.z[:ny, :nx].reshape(count.shape) - base[:, None, :, None]
    flat = flat - slopes[:, None, :, None, 0] * offset - slopes[:, None, :, None, 1] * offset[:, None, None]
    n = count.sum(axis=(1, 3))
    mean = np.nansum(np.where(count > 0, count * flat, 0.0), axis=(1, 3)) / np.maximum(n, 1)
    # what the tile itself pulls the pilot by is added back
    own = 1 - np.clip(n * pilot.variance[k // 2 : ny : k, k // 2 : nx : k], 0, 0.5)
    ratio = (n * mean**2 / own)[(n >= 4) & np.isfinite(base)]
    return float(np.clip(np.median(ratio) / 0.455 / means.noise**2, 1.0, 50.0)) if len(ratio) > 20 else 1.0


def _joint_note(joints: Joints) -> str | None:
    """What was done about straight joints, so that nobody takes the bridged slab for one without them."""
    if not joints.strips:
        return None
    wide = sorted(1000 * strip.width for strip in joints.strips)
    deep = sorted(1000 * strip.depth for strip in joints.strips)
    many = len(joints.strips)
    return (
        f"{many} straight {'joints' if many > 1 else 'joint'} bridged, "
        f"{_span(wide)} mm wide and {_span(deep)} mm deep: a tyre rides over, so the points in "
        f"{'them' if many > 1 else 'it'} were raised by that depth"
    )


def _span(ordered: list[float]) -> str:
    low, high = f"{ordered[0]:.0f}", f"{ordered[-1]:.0f}"
    return low if low == high else f"{low} to {high}"


def _mesh_note(scan: Scan, knots: BreakPoints) -> str | None:
    """How far a mesh's triangles may have rounded the crest: an edge as long as the median one, laid across
    the break."""
    edges = [f.mesh_edge for f in scan.files if f.mesh_edge is not None]
    if not edges:
        return None
    edge = float(np.median(edges))
    crests = -knots.kinks[knots.kinks < 0]
    kink = float(np.percentile(crests, 75)) if len(crests) else 0.0
    if kink < 0.01:
        return f"the scan is a mesh, edges about {edge * 1000:.0f} mm; no sharp crest shows"
    # a chord of length t across a fold of k lies k t / 4 below it in the middle
    return (
        f"the scan is a mesh: its triangles (median edge {edge * 1000:.0f} mm) may have cut the crest, "
        f"which folds by {kink * 100:.0f} %, by up to {kink * edge / 4 * 1000:.1f} mm; "
        "raw points would show it whole"
    )
