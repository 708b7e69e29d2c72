"""``tipsight view``: the view from the bank as a PNG or a film, or a drawing as SVG."""

from typing import TYPE_CHECKING

import click

from tipsight.commands.asking import Asked, command
from tipsight.commands.parsing import one_of, whole
from tipsight.commands.writing import progress, write
from tipsight.errors import Mistake, Mistakes

if TYPE_CHECKING:
    from tipsight.pictures.panels import Eyes


@command
@click.option(
    "-o",
    "--out",
    metavar="FILE",
    help="the file to write; view.png, view.webp or view.svg if not told",
)
@click.option(
    "--eyes",
    type=one_of(("good", "told")),
    default="told",
    metavar="WHOSE",
    help="told: the eyes of the question, their age, sight and colour vision; "
    "good: young eyes of full colour",
)
@click.option(
    "--svg",
    type=one_of(("tip", "float", "shot", "sunk", "distance")),
    metavar="DRAWING",
    help="a drawing in place of the view: tip, float, shot (to each band), sunk "
    "(what is seen against what sinks it) or distance (its grades from 10 to 60 yd)",
)
@click.option(
    "--ripple",
    type=whole(0, 999_999, 3),
    default=0,
    metavar="NUMBER",
    help="another of the many ripples; 0",
)
@click.option(
    "--card",
    type=whole(100, 4000, 324),
    metavar="PIXELS",
    help="how many pixels wide a bank card, laid on your screen, is: the tips are then drawn "
    "at true size too",
)
@click.option(
    "--screen-mm",
    type=whole(40, 3000, 480),
    metavar="MM",
    help="in place of the card: how wide your screen is, with --screen-px",
)
@click.option(
    "--screen-px",
    type=whole(200, 20000, 1920),
    metavar="PIXELS",
    help="how many pixels it has across",
)
@click.option(
    "--read-from",
    type=whole(10, 500, 40),
    default=40,
    metavar="CM",
    help="from your eyes to the screen; 40",
)
@click.option(
    "--moving",
    is_flag=True,
    help="a film of five seconds in place of the picture, view.webp: the tips on the moving "
    "water, and one bite",
)
def run(
    put: Asked,
    out: str | None,
    eyes: "Eyes",
    svg: str | None,
    ripple: int,
    card: int | None,
    screen_mm: int | None,
    screen_px: int | None,
    read_from: int,
    moving: bool,
) -> str:
    """Write the picture, and return what was written and in words what it shows."""
    if bool(screen_mm) != bool(screen_px):
        lacks, example = ("--screen-mm", "480") if screen_px else ("--screen-px", "1920")
        raise Mistakes([Mistake(lacks, "", "tell both the width and the pixels across", example)])
    from tipsight.advice.advise import advise
    from tipsight.pictures import drawn, legend, truesize, view

    answer = advise(put.question)
    put.keep()
    if svg:
        picture = drawn.drawing(answer, svg)
        return write(out or "view.svg", picture.alone().encode(), picture.words)
    if moving:
        from tipsight.pictures import film

        data = film.webp(answer, eyes, ripple, tell=progress("pictures of the film"))
        return write(out or "view.webp", data, legend.film_described(answer))
    fine = truesize.of_card(card) if card else None
    if screen_mm and screen_px:
        fine = truesize.of_screen(screen_mm, screen_px)
    data = view.png(answer, eyes, ripple, fine, read_from / 100.0)
    return write(out or "view.png", data, legend.describe(answer))
