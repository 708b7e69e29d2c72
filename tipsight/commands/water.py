"""``tipsight water``: how much one of one's waters boils, from what it does to a float with no fish about."""

import re
from datetime import date
from typing import Any

import click

from tipsight.commands.asking import Asked, recording
from tipsight.commands.kept import (
    NAME,
    box_file,
    keep,
    listed,
    on_day,
    told_again,
    water_of,
)
from tipsight.commands.parsing import Alone, Said
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs.quantities import Unread, clean, length_mm, number
from tipsight.learning.boiling import MOST_A_MINUTE

EXAMPLE = "tipsight water 'Mill run' mine.toml --dips '6 in 2 min'"
UNTIMED_MIN = 2.0
"""So long is what is told as 'about three a minute' (judgement)."""


def _dips(text: str) -> tuple[float, float] | None:
    plain = clean(text).replace("none", "0")
    timed = re.fullmatch(r"(\d+) in (\S+) ?(?:min|mins|minutes?)", plain)
    loose = re.fullmatch(r"(?:about )?(\S+) (?:times )?(?:a|per) (?:min|minute)", plain)
    try:
        if timed:
            found = float(timed[1]), number(timed[2])
        elif loose:
            found = float(round(number(loose[1]) * UNTIMED_MIN)), UNTIMED_MIN
        else:
            return None
    except Unread:
        return None
    within = 0.25 <= found[1] <= 120.0 and 0.0 <= found[0] <= min(600.0, MOST_A_MINUTE * found[1])
    return found if within else None


def _lowest(text: str) -> float | None:
    try:
        found = length_mm(text)
    except Unread:
        return None
    return found if 0.5 <= found <= 200.0 else None


def _under(text: str) -> tuple[float, float] | None:
    found = re.fullmatch(r"(\S+) ?s (\S+) (?:times )?(?:a|per) (?:min|minute)", clean(text))
    try:
        told = (number(found[1]), number(found[2])) if found else (0.0, 0.0)
    except Unread:
        return None
    return told if 0.001 <= told[0] * told[1] / 60.0 <= 0.45 else None


@recording
@click.argument("name", cls=Alone, says="your name for the water", metavar="NAME", type=NAME)
@click.option(
    "--dips",
    type=Said(_dips, "say how many in how many minutes, none too", "'6 in 2 min'"),
    metavar="COUNT",
    help="how often the tip in hand went under by itself: '6 in 2 min', 'none in 3 min'",
)
@click.option(
    "--lowest",
    type=Said(_lowest, "say how far, 0.5 to 200 mm", "14mm"),
    metavar="LENGTH",
    help="how far over its usual mark the water came at the most in one minute",
)
@click.option(
    "--under",
    type=Said(_under, "say how long, and how often a minute, under half the time", "'1.5 s 3 a minute'"),
    metavar="TIME",
    help="how long it was under each time, and how often: '1.5 s 3 a minute'",
)
@click.option("--last", is_flag=True, help="with the swim and float of the question asked last")
@on_day
@box_file
def run(
    put: Asked,
    name: str,
    dips: tuple[float, float] | None,
    lowest: float | None,
    under: tuple[float, float] | None,
    last: bool,
    day: date | None,
    box: str | None,
) -> str:
    """Keep what was counted, and return what is known of the water now."""
    each: list[dict[str, Any]] = []
    each += [{"dips": dips[0], "minutes": dips[1]}] if dips else []
    each += [{"lowest_mm": lowest}] if lowest else []
    each += [{"seconds": under[0], "per_min": under[1]}] if under else []
    if each and last != put.untold:
        why = "say on which swim with which float, by its file or as you asked it, or --last"
        raise Mistakes([Mistake("water", "", why, EXAMPLE)])
    from tipsight.output.learnt_words import kept, water

    said = ""
    if each:
        from tipsight.inputs.settle import settle

        question = told_again(box) if last else put.question
        settle(question)
        asked = dict(question.told())
        for one in each:
            reading = keep(box, "dips", name, day, {**one, "question": asked})
            said += kept(reading, asked if last else None)
    from tipsight.learning.known import of_water

    found = of_water(listed(box), name)
    if not found:
        why = "nothing was told of it yet; count its dips, none too"
        raise Mistakes([Mistake("water", name, why, EXAMPLE)])
    return said + water(water_of(box, name), found)
