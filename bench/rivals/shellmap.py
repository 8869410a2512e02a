# The exact Gaussian process: scikit-learn's GaussianProcessRegressor with the same Matern 3/2 kernel, held fixed, the same noise and mean.
import json
import sys

import numpy as np
import sklearn
from sklearn.gaussian_process import GaussianProcessRegressor
from sklearn.gaussian_process.kernels import ConstantKernel, Matern

from solid import asked, timed

ask = asked()
k, mean = ask["kernel"], ask["mean"]
at = np.array([[r["X"], r["Y"]] for r in ask["readings"]])
value = np.array([r["Value"] for r in ask["readings"]])
noise = np.array([r["SD"] ** 2 for r in ask["readings"]]) + k["Nugget"] ** 2
places = np.column_stack([ask["x"], ask["y"]])
answers = {}


def work():
    kernel = ConstantKernel(k["SD"] ** 2, "fixed") * Matern([k["RangeX"], k["RangeY"]], "fixed", nu=1.5)
    g = GaussianProcessRegressor(kernel, alpha=noise, optimizer=None).fit(at, value - mean)
    m, s = g.predict(places, return_std=True)
    answers.update(Mean=(m + mean).tolist(), SD=s.tolist())


json.dump({"tool": f"scikit-learn {sklearn.__version__}, NumPy {np.__version__}", **timed(ask["repeat"], work), "answers": answers}, sys.stdout)
