"""What a fresh interpreter loads, so that the command starts at once."""

import re
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
HEAVY = ("colour", "matplotlib", "reportlab", "flask", "werkzeug", "waitress", "astral")
REPORT = (
    "import sys, io, contextlib\n"
    "out = io.StringIO()\n"
    "with contextlib.redirect_stdout(out):\n"
    "    {do}\n"
    "print(*sorted(name for name in sys.modules if '.' not in name))\n"
)


def loaded(do: str) -> set[str]:
    """Return the top-level modules that a fresh interpreter has loaded after ``do``."""
    done = subprocess.run(  # noqa: S603
        [sys.executable, "-c", REPORT.format(do=do)],
        cwd=ROOT,
        capture_output=True,
        check=True,
        encoding="utf-8",
    )
    return set(done.stdout.split())


@pytest.mark.parametrize(
    "do",
    [
        "import tipsight",
        "import tipsight.cli; tipsight.cli.main(['--help'])",
        "import tipsight.cli; tipsight.cli.main(['advise', '--question'])",
        "import tipsight.cli; tipsight.cli.main(['shot'])",
        "import tipsight.cli; tipsight.cli.main(['advise'])",
        "from tipsight import Question, advise",
    ],
)
def test_nothing_heavy_is_loaded(do: str) -> None:
    assert not loaded(do) & set(HEAVY)


@pytest.mark.parametrize(
    "do",
    [
        "import tipsight",
        "import tipsight.cli; tipsight.cli.main([])",
        "import tipsight.cli; tipsight.cli.main(['--help'])",
    ],
)
def test_help_needs_no_sums(do: str) -> None:
    assert not loaded(do) & {"numpy", "scipy", "click"}


def test_the_command_line_is_the_commands_business_alone() -> None:
    found = {
        path.relative_to(ROOT).parts[:2]
        for room in ("tipsight", "webui")
        for path in (ROOT / room).rglob("*.py")
        if re.search(r"^\s*(import|from) (click|argparse)\b", path.read_text("utf-8"), re.M)
    }
    assert found == {("tipsight", "commands")}
