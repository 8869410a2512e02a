# The log of a rectifier from its text into arrays, and the days protected and without protection: the csv module and NumPy.
import csv
import io
import json
import sys

import numpy as np

from solid import asked, timed

ask = asked()
TARGET, FREE = -800, -724  # mV
answers = {}


def work():
    rows = csv.reader(io.StringIO(ask["text"]), delimiter=";")
    next(rows)
    day, clock, _volts, amps, cell, _temp = zip(*rows)
    at = np.array([f"{d}T{c}" for d, c in zip(day, clock)], "datetime64[m]").astype(float) / 1440
    amps, cell = np.array(amps, float), np.array(cell, float)
    off = amps <= 0.01 * ask["rated"]
    good = (cell <= TARGET) & ~(off & (cell >= FREE))
    for_days = np.diff(at)
    answers.update(Days=at[-1] - at[0], Protected=for_days[good[:-1]].sum(), Without=for_days[~good[:-1]].sum())


work()  # warm
json.dump({"tool": f"Python {sys.version.split()[0]}, NumPy {np.__version__}", **timed(ask["repeat"], work), "answers": answers}, sys.stdout)
