"""What the documents show is run: the README's Python, and every example in a docstring."""

import contextlib
import doctest
import importlib
import io
import pkgutil
import re
import shlex
from pathlib import Path

import numpy as np
import pytest

import tipsight
from tipsight.cli import main

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


def answered() -> list[tuple[str, list[str]]]:
    """Return each command that the README shows with its answer, and the lines of that."""
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    found = []
    for block in re.findall(r"^```console\n\$ (.*?)^```", text, re.DOTALL | re.MULTILINE):
        command, _, said = block.replace("\\\n", " ").partition("\n")
        found.append((command, said.splitlines()))
    return found


def test_the_readmes_answers_are_what_is_printed(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    """A length for forty yards, a paint for two waters, a tip for rough water and its price; a box."""
    shown = answered()
    monkeypatch.chdir(tmp_path)
    assert len(shown) >= 4
    for command, said in shown:
        assert main(shlex.split(command)[1:]) == 0
        printed = capsys.readouterr().out
        head = "\n".join(said[: next((n for n, one in enumerate(said) if one[:5] == "BITES"), None)])
        assert printed.startswith(head), command
        assert "\n".join(said[len(head.splitlines()) :]) in printed, command


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
