"""``tipsight view``: the view from the bank as a PNG or a film, or a drawing as SVG."""

from typing import TYPE_CHECKING

import click

from tipsight.commands.asking import Asked, command
from tipsight.commands.parsing import one_of, whole
from tipsight.commands.writing import progress, write

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
    default="good",
    metavar="WHOSE",
    help="good: young eyes of full colour; told: the eyes of the question, their age, "
    "sight and colour vision",
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
    "--moving",
    is_flag=True,
    help="a film of five seconds in place of the picture, view.webp: the tips on the moving "
    "water, and one bite",
)
def run(
    put: Asked, out: str | None, eyes: "Eyes", svg: str | None, ripple: int, moving: bool
) -> str:
    """Write the picture, and return what was written and in words what it shows."""
    from tipsight.advice.advise import advise
    from tipsight.pictures import drawn, view

    answer = advise(put.question)
    if svg:
        picture = drawn.drawing(answer, svg)
        return write(out or "view.svg", picture.alone().encode(), picture.words)
    if moving:
        from tipsight.pictures import film

        data = film.webp(answer, eyes, ripple, tell=progress("pictures of the film"))
        return write(out or "view.webp", data, view.film_described(answer))
    data = view.png(answer, eyes, ripple)
    return write(out or "view.png", data, view.describe(answer))
