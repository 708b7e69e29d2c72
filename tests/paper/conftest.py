"""Pages of paper, rasterised and read as a printer and a reader would have them."""

import os
import shutil
import subprocess
from dataclasses import dataclass
from itertools import cycle, product

import numpy as np
import pytest
from PIL import Image

from tipsight.advice.advise import advise
from tipsight.advice.answer import Answer
from tipsight.inputs import demo
from tipsight.paper.cells import RIPPLES, SKIES, WATERS, YARDS, Cell, asked, cell

DPI = 508.0
"""A pixel of 0.05 mm."""
PIXEL_MM = 25.4 / DPI


@pytest.fixture(scope="session")
def answers():
    return {name: advise(demo.question(name)) for name in demo.names()}


@dataclass
class Worked:
    """One cell of the pocket file, and the whole answer that it is taken from."""

    cell: Cell
    answer: Answer


@pytest.fixture(scope="session")
def worked_out():
    """Every sky over every water, by float, sky, ripple, yards and water, the rest by turns."""
    found = {}
    turns = zip(cycle(demo.names()), cycle(RIPPLES), cycle(YARDS), product(SKIES, WATERS))
    for name, ripple, yards, (sky, water) in turns:
        question = demo.question(name)
        answer = advise(asked(question, yards, water, ripple, sky))
        one = Worked(cell(question, yards, water, ripple, sky), answer)
        found[name, sky, ripple, yards, water] = one
    return found


class Poppler:
    """What poppler's programs make of a PDF."""

    def __init__(self, folder):
        self.folder = folder

    def _run(self, program, data, *before, after=()):
        file = self.folder / "page.pdf"
        file.write_bytes(data)
        done = subprocess.run(  # noqa: S603
            [program, *before, str(file), *after], capture_output=True, check=True
        )
        assert done.stderr == b""
        return done.stdout.decode("utf-8")

    def raster(self, data, dpi=DPI, page=1):
        """Return a page as rows of grey, 0 black to 255 white."""
        out = self.folder / "page"
        how = ("-r", f"{dpi:g}", "-gray", "-singlefile", "-f", f"{page}")
        self._run("pdftoppm", data, *how, after=[str(out)])
        with Image.open(out.with_suffix(".pgm")) as picture:
            return np.asarray(picture).copy()

    def words(self, data):
        """Return the text, each run of blanks as one."""
        return " ".join(self._run("pdftotext", data, after=["-"]).split())

    def fonts(self, data):
        """Return one line for each typeface."""
        return self._run("pdffonts", data).splitlines()[2:]

    def info(self, data):
        """Return what the file says of itself."""
        listed = self._run("pdfinfo", data).splitlines()
        return {key: value.strip() for key, _, value in (line.partition(":") for line in listed)}

    @staticmethod
    def ink(page, left, foot, wide, tall, limit=128):
        """Return where there is ink in a window told in mm from the page's lower left corner."""
        top = page.shape[0] * PIXEL_MM - foot - tall
        rows = slice(round(top / PIXEL_MM), round((top + tall) / PIXEL_MM))
        columns = slice(round(left / PIXEL_MM), round((left + wide) / PIXEL_MM))
        return page[rows, columns] < limit


@pytest.fixture
def poppler(tmp_path):
    """Poppler; a person without it skips these tests, a checking machine must not."""
    if not shutil.which("pdftoppm"):
        missing = "no poppler here: 'apt-get install poppler-utils' gets it"
        (pytest.fail if os.environ.get("CI") else pytest.skip)(missing)
    return Poppler(tmp_path)
