"""``tipsight paint``: a row of one's own table from a colour or a measured spectrum."""

import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from tipsight import tables as own_tables
from tipsight.commands import COMMANDS
from tipsight.commands.parsing import Alone, Line, Said, one_of
from tipsight.commands.writing import write as write_file
from tipsight.errors import Mistake, Mistakes

if TYPE_CHECKING:
    from tipsight.own.paint_row import Glows

GLOWS = ("not at all", "a little", "strongly")
ANY_NAME = Said(lambda text: text, "say what you call it, in small letters", "'my orange'")


def _block(swatch: str) -> str:
    """Return a patch of a colour where a terminal can show it, else nothing."""
    if not sys.stdout.isatty() or "NO_COLOR" in os.environ:
        return ""
    red, green, blue = (int(swatch[at : at + 2], 16) for at in (1, 3, 5))
    patch = f"\x1b[48;2;{red};{green};{blue}m{' ' * 16}\x1b[0m\n"
    return patch * 3


def _run(
    name: str,
    colour: str | None,
    spectrum: str | None,
    glows: "Glows",
    tables: str | None,
    again: bool,
    out: str | None,
) -> str:
    """Write the row, and return what was made and how it shows."""
    if (colour is None) == (spectrum is None):
        why = "say either a colour or a file with a measured spectrum"
        raise Mistakes([Mistake("paint", name, why, "--colour '#ff6a00'")])
    if tables is None:
        why = "say the folder of your own tables; it is made if there is none"
        raise Mistakes([Mistake("--tables", "", why, "--tables my-tables")])
    from tipsight.output import paint_words
    from tipsight.own import paint_row, shows

    if colour is not None:
        made = paint_row.from_colour(name, colour, glows)
    else:
        made = paint_row.from_spectrum(name, Path(f"{spectrum}"), glows)
    files = list(paint_row.write(made, Path(tables), again))
    with own_tables.using(tables):
        told = shows.contrasts([name, made.near])
    swatch = f"{made.row['swatch']}"
    if out is not None:
        from tipsight.pictures import swatch as drawn

        picture = drawn.drawing([name, made.near], tables)
        write_file(out, picture.alone().encode(), picture.words)
    doubt = float(made.row["doubt"])
    said = paint_words.text(name, swatch, made.near, made.off, told, doubt, files)
    return _block(swatch) + said


run = click.command(
    "paint", Line, help=f"{COMMANDS['paint'][0].upper()}{COMMANDS['paint'][1:]}."
)(_run)
run.params += [
    Alone(["name"], "what you call it, in small letters", metavar="NAME", type=ANY_NAME),
    click.Option(
        ["--colour"],
        metavar="COLOUR",
        help="as a screen has it ('#ff6a00', '255 106 0'), as L*a*b* ('lab 60 50 40'), or Munsell's "
        "('5YR 6/12')",
    ),
    click.Option(
        ["--spectrum"],
        metavar="FILE",
        help="a measured reflectance instead: CSV with the columns wavelength_nm and reflectance, "
        "400 to 700 nm at the least",
    ),
    click.Option(
        ["--glows"], type=one_of(GLOWS), default=GLOWS[0], metavar="HOW",
        help="not at all, 'a little' or strongly: whether it is a fluorescent paint",
    ),
    click.Option(["--tables"], metavar="FOLDER", help="the folder of your own tables"),
    click.Option(["--again"], is_flag=True, help="make it anew where it stands already"),
    click.Option(["-o", "--out"], metavar="FILE", help="a drawing of it beside the nearest of ours (SVG)"),
]  # fmt: skip
