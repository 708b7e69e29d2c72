"""Timings as ratios within one run, by hand: ``python tests/benchmark/run.py``.

Nothing here asserts a time: a machine's mood is not the program's fault.
"""

import os
import statistics
import subprocess
import sys
import time
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[1] / "helpers"))


def median_s(work: Callable[[], object], runs: int = 15) -> float:
    """Median wall time of one call, after a warm one."""
    work()
    times = []
    for _ in range(runs):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return statistics.median(times)


def cold_s(*arguments: str, runs: int = 9) -> float:
    """Median wall time of a fresh interpreter."""
    command = [sys.executable, *arguments]

    # a program that is installed keeps its compiled files, as its libraries do; so must this one
    kept = {name: told for name, told in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}

    def start() -> None:
        subprocess.run(command, check=True, stdout=subprocess.DEVNULL, env=kept)  # noqa: S603 - our own

    return median_s(start, runs)


def answer_warm() -> None:
    """The whole answer, shot plan and all, and beside it a look at the tip in hand alone."""
    from tipsight.advice.advise import advise, examine
    from tipsight.advice.close_look import close_look
    from tipsight.advice.swim import swim
    from tipsight.inputs import demo
    from tipsight.inputs.settle import settle

    print("warm, one process (asked: demo 60 ms, dusk 90 ms; a tip in a swim worked out 2 ms)")
    print("          answer   examine  its swim  the tip alone   of the answer")
    for name in ("demo", "match", "dusk"):
        question = demo.question(name)
        case = settle(question)
        here = swim(case)
        whole, looked, worked, tip = (
            median_s(work)
            for work in (
                lambda q=question: advise(q),
                lambda q=question: examine(q),
                lambda c=case: swim(c),
                lambda s=here: close_look(replace(s), s.case.tip),
            )
        )
        times = f"{1e3 * whole:5.0f} ms {1e3 * looked:6.1f} ms {1e3 * worked:6.1f} ms {1e3 * tip:9.2f} ms"
        print(f"  {name:6s} {times}         1 : {whole / tip:.0f}")


def many() -> None:
    """Twenty-four distances of one float: one after another, in a sweep, in two processes."""
    from concurrent.futures import ProcessPoolExecutor

    from tipsight.advice.advise import advise, sweep
    from tipsight.inputs import demo

    asked = [demo.question("demo").with_options(distance=f"{yards} yd") for yards in range(12, 36)]
    each = median_s(lambda: [advise(one) for one in asked], 3)
    swept = median_s(lambda: list(sweep(asked)), 3)
    with ProcessPoolExecutor(2) as pool:
        side_by_side = median_s(lambda: list(sweep(asked, pool)), 3)
    print("twenty-four distances of one float")
    print(
        f"  each {1e3 * each:.0f} ms; sweep {swept / each:.2f} of that, with two processes "
        f"{side_by_side / each:.2f}"
    )


def answer_cold() -> None:
    """From cold, against the bare imports that nobody can do without."""
    imports = cold_s("-c", "import numpy, scipy.special, scipy.optimize")
    whole = cold_s("-m", "tipsight", "advise")
    helped = cold_s("-m", "tipsight", "--help")
    print("from cold (asked: at most 1.5 times the bare imports)")
    print(
        f"  bare imports {1e3 * imports:.0f} ms, advise {1e3 * whole:.0f} ms: ratio {whole / imports:.2f}"
    )
    print(f"  --help {1e3 * helped:.0f} ms: ratio {helped / imports:.2f}")


def sight_against_brute_force() -> None:
    """Candidates by the closed sums against a two-dimensional transform of each."""
    from sight_reference import brute_level  # the literal one, in tests/helpers

    from tipsight.sight import kernel
    from tipsight.sight.clutter import Clutter
    from tipsight.sight.eye import Eye

    eye, clutter = Eye(60.0), Clutter(0.16, 129.0, 0.064, 0.5, 2.0, 0.62)
    held = kernel.kernels([36.6], 700.0, eye, clutter)
    diameter = np.linspace(2.0, 8.0, 20)
    edges = np.stack([np.zeros(30), np.linspace(5, 30, 30), np.linspace(10, 60, 30)], axis=1)
    contrast = np.random.default_rng(1).uniform(-1, 4, (400, 2, 3)) * [1.0, 0.0, 0.0]
    fast = median_s(
        lambda: kernel.level_grid(held, diameter_mm=diameter, edges_mm=edges, contrast=contrast),
        5,
    )
    each = fast / (20 * 30 * 400)
    grid = kernel.level_grid(
        held, diameter_mm=diameter[:2], edges_mm=edges[:2], contrast=contrast[:2]
    )
    worst, slow = 0.0, []
    for d in range(2):
        for s in range(2):
            for p in range(2):
                start = time.perf_counter()
                level = brute_level(
                    diameter[d],
                    edges[s],
                    contrast[p],
                    range_m=36.6,
                    adaptation_cd_m2=700.0,
                    eye=eye,
                    clutter=clutter,
                )
                slow.append(time.perf_counter() - start)
                worst = max(worst, abs(float(level) / grid[d, s, p] - 1))
    print("sight of 240,000 candidates (asked: 1,000 times a brute-force transform, to 1e-3)")
    print(
        f"  {1e3 * fast:.0f} ms, {1e6 * each:.2f} us each; "
        f"brute force {1e3 * statistics.median(slow):.0f} ms each: "
        f"{statistics.median(slow) / each:,.0f} times; they differ by {worst:.1e}"
    )


if __name__ == "__main__":
    sight_against_brute_force()
    answer_warm()
    many()
    answer_cold()
