"""USDZ, USDC and USDA: meshes and points of a stage, in the stage's own unit and up axis. An extra."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from crestcut.base.errors import CrestcutError
from crestcut.base.grid import FloatArray
from crestcut.base.plain_files import named_beside
from crestcut.scan.formats.mesh import triangles
from crestcut.scan.formats.raw import RawScan, UnitFound, UpFound, unreadable
from crestcut.scan.placing.rounding import quantum_of

_UNITS = {1.0: "m", 0.01: "cm", 0.001: "mm", 0.0254: "in", 0.3048: "ft"}


def read_usd(path: Path) -> RawScan:
    """Every mesh of the stage moved by its transforms, or its points where there is no mesh."""
    try:
        from pxr import Sdf, Usd, UsdGeom
    except ImportError:
        raise CrestcutError(
            "USDZ needs one more library", str(path), "install usd-core (pip install usd-core), or export GLB"
        ) from None
    try:
        _refuse_outside(path, Sdf)
        stage = Usd.Stage.Open(str(path))
    except CrestcutError:
        raise
    except Exception as error:
        raise unreadable(
            path, "USDZ", str(error).strip().splitlines()[-1] if str(error).strip() else "damaged"
        ) from None
    per_unit = float(UsdGeom.GetStageMetersPerUnit(stage))
    axis = str(UsdGeom.GetStageUpAxis(stage)).lower()
    if axis not in ("x", "y", "z"):
        raise unreadable(path, "USDZ", "its up axis is none of x, y and z")
    name = _UNITS.get(round(per_unit, 9), f"{per_unit:g} m")
    shapes = [prim for prim in stage.Traverse() if prim.IsA(UsdGeom.PointBased)]
    meshes = [_mesh(prim, Usd, UsdGeom, path) for prim in shapes if prim.IsA(UsdGeom.Mesh)]
    meshes = [(p, f) for p, f in meshes if len(f)]
    faces: NDArray[np.int64] | None = None
    if meshes:
        starts = np.cumsum([0] + [len(p) for p, _ in meshes[:-1]])
        points = np.concatenate([p for p, _ in meshes])
        faces = triangles(
            np.concatenate([f + s for (_, f), s in zip(meshes, starts, strict=True)]), len(points), path
        )
    else:
        clouds = [_placed(prim, Usd, UsdGeom) for prim in shapes if prim.IsA(UsdGeom.Points)]
        if not clouds:
            raise CrestcutError("no mesh or points in the file", str(path), "export the scan again")
        points = np.concatenate(clouds)
    return RawScan(
        format="USD",
        points=points,
        faces=faces,
        unit=UnitFound(name, (per_unit,) * 3, f"written in the file: {name}"),
        up=UpFound(axis, f"written in the file: {axis}"),
        quantum=max((_quantum(prim, Usd, UsdGeom) for prim in shapes), default=0.0),
    )


def _refuse_outside(path: Path, sdf: Any) -> None:
    """Raise CrestcutError where the stage, or a layer that it takes in, names a file outside its folder or
    package: sublayers, references and payloads are opened with the stage, clips with its values."""
    mend = "export it as one USDZ or GLB file"
    ahead, seen = [str(path.resolve())], set[str]()
    while ahead:
        layer = sdf.Layer.FindOrOpen(at := ahead.pop())
        seen.add(at)
        if layer is None:
            continue
        clips: list[Any] = []
        layer.Traverse("/", lambda p, of=layer, to=clips: to.append(p) if _has_clips(of, p) else None)
        if clips:
            raise CrestcutError("it takes values from clips in other files", str(path), mend)
        for name in layer.GetCompositionAssetDependencies():
            whole = layer.ComputeAbsolutePath(name)  # of a package: "outer.usdz[inner.usda]"
            named_beside(path, whole.split("[")[0], mend)
            if whole not in seen:
                ahead.append(whole)


def _has_clips(layer: Any, at: Any) -> bool:
    return bool(at.IsPrimPath()) and bool(layer.GetObjectAtPath(at).HasInfo("clips"))


def _written(prim: Any, geom: Any) -> FloatArray:
    """Points (n, 3) of a prim as the file has them."""
    points = geom.PointBased(prim).GetPointsAttr().Get() or np.empty((0, 3))
    return np.asarray(points, dtype=np.float64).reshape(-1, 3)


def _placed(prim: Any, usd: Any, geom: Any) -> FloatArray:
    """Points (n, 3) of a prim in stage coordinates."""
    matrix = _matrix(prim, usd, geom)
    return np.asarray(_written(prim, geom) @ matrix[:3, :3] + matrix[3, :3])


def _matrix(prim: Any, usd: Any, geom: Any) -> FloatArray:
    """(4, 4) from the prim to the stage; USD multiplies row vectors from the left."""
    now = usd.TimeCode.Default()
    return np.asarray(geom.Xformable(prim).ComputeLocalToWorldTransform(now), dtype=np.float64)


def _quantum(prim: Any, usd: Any, geom: Any) -> float:
    """What the prim's coordinates are rounded to, in units of the stage."""
    scale = np.linalg.norm(_matrix(prim, usd, geom)[:3, :3], axis=1).max()
    return quantum_of(_written(prim, geom)) * float(scale)


def _mesh(prim: Any, usd: Any, geom: Any, path: Path) -> tuple[FloatArray, NDArray[np.int64]]:
    """Points and triangles of a mesh prim: polygons are cut as fans."""
    mesh = geom.Mesh(prim)
    counts = np.asarray(mesh.GetFaceVertexCountsAttr().Get() or [], dtype=np.int64)
    index = np.asarray(mesh.GetFaceVertexIndicesAttr().Get() or [], dtype=np.int64)
    if counts.sum() != len(index) or counts.min(initial=0) < 0:
        raise CrestcutError("its faces do not add up", str(path), "copy or export it again")
    starts = np.cumsum(counts) - counts
    fans = [
        np.stack([index[s], index[s + k], index[s + k + 1]], axis=1)
        for k in range(1, int(counts.max(initial=2)) - 1)
        if len(s := starts[counts > k + 1])
    ]
    return _placed(prim, usd, geom), (np.concatenate(fans) if fans else np.empty((0, 3), np.int64))
