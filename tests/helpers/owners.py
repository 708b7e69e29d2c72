"""Synthetic owners who read a fence card, drawn from the error model of our own note.

They test the sum, not the eye. `tests/benchmark/two_hundred_owners.py` is the long form.
"""

import numpy as np

from tipsight.learning import bars, belief
from tipsight.sight import eye
from tipsight.units import YARD_M


def owners(count, seed, *, told="measured", true_step=0.03, slips=0.05):
    """Return truth, mean and sd of ln G for owners drawn from the note's own error model."""
    rng = np.random.default_rng(seed)
    found = []
    for _ in range(count):
        age = rng.uniform(20, 75)
        g = rng.normal(0, belief.prior_sd(age))
        light = rng.normal(0, 0.06)
        step = np.exp(rng.normal(0, true_step))
        read = {}
        for n, bar in enumerate(bars.BARS, 1):
            own = g + light + rng.normal(0, 0.20) + rng.normal(0, 0.06)
            each = []
            for _ in range(2):
                say = own + rng.normal(0, 0.20)
                far = np.geomspace(3, 100, 160)
                seen = bars.level(bar, far, eye.Eye(age)) * np.exp(say)
                goes = float(np.interp(-np.log(2.4), -np.log(seen), np.log(far)))
                goes = np.exp(goes) if rng.random() > slips / 2 else np.exp(rng.uniform(1.2, 4.5))
                yards = max(round(goes * step / YARD_M), 4)
                each.append(min(yards, 108) * YARD_M)
            read[n] = each
        sheet = bars.Sheet(read, told)
        mean, sd = belief.believed(age, [bars.likelihood(sheet, age)]).eyes
        found.append((g, mean, sd))
    return np.array(found).T
