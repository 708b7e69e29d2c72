"""What the documents show is run: the README's Python, and every example in a docstring."""

import contextlib
import doctest
import importlib
import io
import pkgutil
import re
from pathlib import Path

import numpy as np

import tipsight

ROOT = Path(__file__).parents[2]
LEAST_EXAMPLES = 40


def modules() -> list[str]:
    """Return the names of all modules of the package, but for the one that runs it."""
    found = pkgutil.walk_packages(tipsight.__path__, "tipsight.")
    return ["tipsight", *(m.name for m in found if not m.name.endswith("__main__"))]


def first_python(text: str) -> list[str]:
    """Return the lines of the first block of Python in a Markdown text."""
    block = re.search(r"^```python\n(.*?)^```", text, re.DOTALL | re.MULTILINE)
    assert block is not None
    return [line for line in block[1].splitlines() if line.strip()]


def test_the_readmes_lines_of_python_run() -> None:
    lines = first_python((ROOT / "README.md").read_text(encoding="utf-8"))
    assert 0 < len(lines) <= 6
    out = io.StringIO()
    with contextlib.redirect_stdout(out):
        exec("\n".join(lines), {})  # noqa: S102
    printed = out.getvalue().splitlines()
    assert len(printed) == 2
    assert re.match(r"[\d.]+ [\d.]+ \['", printed[0])


def test_the_examples_in_docstrings_hold() -> None:
    with np.printoptions(legacy=False):  # colour-science leaves an older style
        failed = [
            name for name in modules() if doctest.testmod(importlib.import_module(name)).failed
        ]
    assert failed == []


def test_there_are_examples() -> None:
    finder = doctest.DocTestFinder(exclude_empty=True)
    count = sum(
        len(test.examples) > 0
        for name in modules()
        for test in finder.find(importlib.import_module(name))
    )
    assert count >= LEAST_EXAMPLES
