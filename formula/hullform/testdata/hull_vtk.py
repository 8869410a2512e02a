# Reference numbers for reference_test.go, from general libraries: the same mesh clipped with VTK 9.1.0 (vtkClipClosedSurface), integrals over its
# triangles with numpy 1.24.2, rest with scipy 1.10.1 (optimize.root, tol 1e-12). Debian 12: python3-vtk9, python3-scipy. Run: python3 hull_vtk.py
import numpy as np
import vtk
from scipy.optimize import root
from vtk.util.numpy_support import numpy_to_vtk, numpy_to_vtkIdTypeArray, vtk_to_numpy

L, B, T, D = 92, 13.4, 5, 7.6  # parabolic hull with straight sides above T
xs, zs = np.linspace(0, L, 47), np.append(np.linspace(0, T, 21), D)
y = B / 2 * (1 - (2 * xs[:, None] / L - 1) ** 2) * (1 - np.maximum(0, (T - zs[None, :]) / T) ** 2)
points, faces, port, star = [], [], {}, {}
for i, x in enumerate(xs):
    for j, z in enumerate(zs):
        port[i, j] = star[i, j] = len(points)
        points.append((x, y[i, j], z))
        if y[i, j] > 0:
            star[i, j] = len(points)
            points.append((x, -y[i, j], z))


def put(*t):
    if len(set(t)) == 3 and any(points[v][1] != 0 for v in t):
        faces.append(t)


for i in range(len(xs) - 1):
    for j in range(len(zs) - 1):
        a, b, c, d = (i, j), (i, j + 1), (i + 1, j + 1), (i + 1, j)
        put(port[a], port[b], port[c]), put(port[a], port[c], port[d])
        put(star[a], star[c], star[b]), put(star[a], star[d], star[c])
    t, u = (i, len(zs) - 1), (i + 1, len(zs) - 1)
    put(star[t], star[u], port[u]), put(star[t], port[u], port[t])

vp = vtk.vtkPoints()
vp.SetDataTypeToDouble()
vp.SetData(numpy_to_vtk(np.array(points, float), deep=True))
cells = vtk.vtkCellArray()
cells.SetCells(len(faces), numpy_to_vtkIdTypeArray(np.hstack([np.full((len(faces), 1), 3), faces]).astype(np.int64).ravel(), deep=True))
hull = vtk.vtkPolyData()
hull.SetPoints(vp)
hull.SetPolys(cells)


def plane(draft, trim, heel):
    a = np.arctan(trim * np.cos(heel) / L)
    n = np.array([np.sin(a), -np.cos(a) * np.sin(heel), np.cos(a) * np.cos(heel)])
    u = np.array([1, 0, 0]) - n * n[0]
    u /= np.linalg.norm(u)
    return n, n @ np.array([L / 2, 0, draft]), u, np.cross(n, u)


def clip(n, d):
    p, c = vtk.vtkPlane(), vtk.vtkPlaneCollection()
    p.SetOrigin(*(n * d))
    p.SetNormal(*(-n))
    c.AddItem(p)
    f, t = vtk.vtkClipClosedSurface(), vtk.vtkTriangleFilter()
    f.SetInputData(hull)
    f.SetClippingPlanes(c)
    f.SetTolerance(1e-12)
    t.SetInputConnection(f.GetOutputPort())
    t.Update()
    o = t.GetOutput()
    p, k = vtk_to_numpy(o.GetPoints().GetData()).astype(float), vtk_to_numpy(o.GetPolys().GetData()).reshape(-1, 4)[:, 1:]
    v = np.einsum("ij,ij->i", p[k[:, 0]], np.cross(p[k[:, 1]], p[k[:, 2]])) / 6
    return v.sum(), (p[k].mean(1) * 0.75 * v[:, None]).sum(0) / v.sum(), p, k


def area(p, k):
    return np.linalg.norm(np.cross(p[k[:, 1]] - p[k[:, 0]], p[k[:, 2]] - p[k[:, 0]]), axis=1) / 2


n, d, u, w = plane(4.2, 0.9, 0.25)
volume, centre, p, k = clip(n, d)
lid = (np.abs(p[k] @ n - d) < 1e-7).all(1)
s = area(p, k[lid])
flotation = (p[k[lid]].mean(1) * s[:, None]).sum(0) / s.sum()


def second(e, f):
    a, b = (p[k[lid]] - flotation) @ e, (p[k[lid]] - flotation) @ f
    return (s / 12 * (a.sum(1) * b.sum(1) + (a * b).sum(1))).sum()


print("volume %.6f centre %s" % (volume, centre))
print("waterplane %.6f flotation %s" % (s.sum(), flotation))
print("transverse %.6f longitudinal %.5f product %.7f" % (second(w, w), second(u, u), second(u, w)))
print("wetted %.6f" % area(p, k[~lid]).sum())


def unrest(x, mass=2.5e6, g=np.array([45.5, 0.1, 4.6])):
    n, d, u, w = plane(*x)
    volume, centre, _, _ = clip(n, d)
    return volume / mass * 1025 - 1, (centre - g) @ u, (centre - g) @ w


print("draft, trim, heel", root(unrest, [4.5, 0, 0.01], tol=1e-12).x.round(8))
