"""Imaging and paper are loaded when a picture or a page is made, not before."""

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
MODULES = (
    "tipsight.pictures.view, tipsight.pictures.svg, tipsight.pictures.drawn",
    "tipsight.paper.sheet, tipsight.paper.cards, tipsight.paper.wall, tipsight.paper.pocket",
    "tipsight.commands.sheet, tipsight.commands.view, tipsight.commands.card, tipsight.commands.pocket",
)


@pytest.mark.parametrize("modules", MODULES)
def test_nothing_heavy_is_loaded_by_import_alone(modules):
    does = f"import sys, {modules}; print(*sys.modules)"
    done = subprocess.run(  # noqa: S603
        [sys.executable, "-c", does], cwd=ROOT, capture_output=True, check=True, encoding="utf-8"
    )
    assert not set(done.stdout.split()) & {"reportlab", "PIL", "colour", "matplotlib", "flask"}
