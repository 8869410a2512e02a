# Where a hull comes to rest under each loading, free to sink, trim and heel: scipy.optimize.root over the integrals of solid.py, or over those of the hull
# clipped by VTK.
import json
import sys

import numpy as np
import scipy
from scipy.optimize import root

from solid import Solid, asked, plane, timed

ask = asked()
L, rho = ask["length"], ask["density"]
hull = Solid(ask["hull"]["vertices"], ask["hull"]["triangles"])
tool = f"NumPy {np.__version__}, SciPy {scipy.__version__}"
cut = hull.under

if ask.get("clip") == "vtk":
    from vtkmodules.util.numpy_support import numpy_to_vtk, numpy_to_vtkIdTypeArray, vtk_to_numpy
    from vtkmodules.vtkCommonCore import vtkPoints, vtkVersion
    from vtkmodules.vtkCommonDataModel import vtkCellArray, vtkPlane, vtkPlaneCollection, vtkPolyData
    from vtkmodules.vtkFiltersCore import vtkTriangleFilter
    from vtkmodules.vtkFiltersGeneral import vtkClipClosedSurface

    tool = f"VTK {vtkVersion.GetVTKVersion()}, SciPy {scipy.__version__}"
    points, cells, poly = vtkPoints(), vtkCellArray(), vtkPolyData()
    points.SetData(numpy_to_vtk(hull.v, deep=True))
    cells.SetCells(len(hull.t), numpy_to_vtkIdTypeArray(np.hstack([np.full((len(hull.t), 1), 3), hull.t]).astype(np.int64).ravel(), deep=True))
    poly.SetPoints(points)
    poly.SetPolys(cells)

    def cut(n, d):
        p, many, clip, split = vtkPlane(), vtkPlaneCollection(), vtkClipClosedSurface(), vtkTriangleFilter()
        p.SetOrigin(*(n * d))
        p.SetNormal(*-n)
        many.AddItem(p)
        clip.SetInputData(poly)
        clip.SetClippingPlanes(many)
        clip.SetTolerance(1e-12)
        split.SetInputConnection(clip.GetOutputPort())
        split.Update()
        out = split.GetOutput()
        p = vtk_to_numpy(out.GetPoints().GetData()).astype(float)[vtk_to_numpy(out.GetPolys().GetData()).reshape(-1, 4)[:, 1:]]
        v = np.einsum("ij,ij->i", p[:, 0], np.cross(p[:, 1], p[:, 2])) / 6
        return v.sum(), (p.mean(1) * 0.75 * v[:, None]).sum(0)


def rest(load):
    mass, g = load["mass"], np.array([load["lcg"], load["tcg"], load["vcg"]])

    def unrest(x):
        n, d, u, w = plane(*x, L)
        volume, moment = cut(n, d)
        arm = moment / volume - g
        return volume * rho / mass - 1, arm @ u / L, arm @ w / 10

    r = root(unrest, [4.5, 0, 0.01], tol=1e-11)
    assert r.success or max(abs(r.fun)) < 1e-9, r
    return r.x.tolist()


answers = []


def work():
    answers[:] = [rest(load) for load in ask["loads"]]


rest(ask["loads"][0])  # warm
json.dump({"tool": tool, **timed(ask["repeat"], work), "answers": answers}, sys.stdout)
