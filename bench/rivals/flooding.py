# Where a ship comes to rest with two of her compartments open to the sea: buoyancy of the hull less the permeable share of the compartments under water,
# scipy.optimize.root over the integrals of solid.py. VTK cuts the compartments out of the hull beforehand. null where it finds no rest.
import json
import sys

import numpy as np
import scipy
from scipy.optimize import root
from vtkmodules.util.numpy_support import numpy_to_vtk, numpy_to_vtkIdTypeArray, vtk_to_numpy
from vtkmodules.vtkCommonCore import vtkPoints, vtkVersion
from vtkmodules.vtkCommonDataModel import vtkCellArray, vtkPlane, vtkPlaneCollection, vtkPolyData
from vtkmodules.vtkFiltersCore import vtkTriangleFilter
from vtkmodules.vtkFiltersGeneral import vtkClipClosedSurface

from solid import Solid, asked, plane, timed

ask = asked()
L, rho, share, load = ask["length"], ask["density"], ask["permeability"], ask["load"]
hull = Solid(ask["hull"]["vertices"], ask["hull"]["triangles"])


def room(low, high):
    points, cells, poly, many = vtkPoints(), vtkCellArray(), vtkPolyData(), vtkPlaneCollection()
    points.SetData(numpy_to_vtk(hull.v, deep=True))
    cells.SetCells(len(hull.t), numpy_to_vtkIdTypeArray(np.hstack([np.full((len(hull.t), 1), 3), hull.t]).astype(np.int64).ravel(), deep=True))
    poly.SetPoints(points)
    poly.SetPolys(cells)
    for axis in range(3):
        for corner, way in ((low, 1), (high, -1)):
            p, n = vtkPlane(), [0, 0, 0]
            n[axis] = way
            p.SetOrigin(*corner)
            p.SetNormal(*n)
            many.AddItem(p)
    clip, split = vtkClipClosedSurface(), vtkTriangleFilter()
    clip.SetInputData(poly)
    clip.SetClippingPlanes(many)
    clip.SetTolerance(1e-12)
    split.SetInputConnection(clip.GetOutputPort())
    split.Update()
    out = split.GetOutput()
    return Solid(vtk_to_numpy(out.GetPoints().GetData()).astype(float), vtk_to_numpy(out.GetPolys().GetData()).reshape(-1, 4)[:, 1:])


rooms = [room(*b) for b in ask["boxes"]]
mass, g = load["mass"], np.array([load["lcg"], load["tcg"], load["vcg"]])


def rest(pair):
    def unrest(x):
        n, d, u, w = plane(*x, L)
        volume, moment = hull.under(n, d)
        for i in pair:
            v, m = rooms[i].under(n, d)
            volume, moment = volume - share * v, moment - share * m
        arm = moment / volume - g
        return volume * rho / mass - 1, arm @ u / L, arm @ w / 10

    r = root(unrest, [4.5, 0, 0.01], tol=1e-11)
    return r.x.tolist() if max(abs(r.fun)) < 1e-9 else None


answers = []


def work():
    answers[:] = [rest(p) for p in ask["pairs"]]


rest(ask["pairs"][0])  # warm
json.dump({"tool": f"NumPy {np.__version__}, SciPy {scipy.__version__}, VTK {vtkVersion.GetVTKVersion()}", **timed(ask["repeat"], work), "answers": answers}, sys.stdout)
