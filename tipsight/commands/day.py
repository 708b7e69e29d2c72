"""``tipsight day``: the light of one day on one swim, and which tip to have on when."""

import json as as_json
from collections.abc import Callable
from datetime import date, datetime, time, tzinfo
from typing import Any

import click

from tipsight.commands.asking import Asked, command
from tipsight.commands.parsing import Said
from tipsight.commands.writing import progress, write
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs.clock import compass_deg, day_and_zone, spot, time_of_day
from tipsight.inputs.quantities import Unread
from tipsight.inputs.values import Asker

EXAMPLE_DATE = "'2026-10-15 Europe/London'"


def _read(reader: Callable[[str], Any], allowed: str, example: str) -> Said:
    def read(text: str) -> Any:
        try:
            return reader(text)
        except (Unread, ValueError, KeyError, OSError):
            return None

    return Said(read, allowed, example)


@command
@click.option(
    "--date",
    "day",
    type=_read(day_and_zone, "say a day, and the zone if it is not this computer's", EXAMPLE_DATE),
    metavar="DAY",
    help="the day, and its zone if it is not this computer's: '2026-10-15 Europe/London'; "
    "today if not told",
)
@click.option(
    "--place",
    type=_read(spot, "say latitude and longitude in degrees", "'52.1 N 1.5 W'"),
    metavar="PLACE",
    help="where on earth: '52.1 N 1.5 W'",
)
@click.option(
    "--facing",
    type=_read(compass_deg, "say a point of the compass, or degrees from north", "SW"),
    metavar="COMPASS",
    help="which way you look from you to the float: 'south-west'",
)
@click.option(
    "--from",
    "start",
    type=_read(time_of_day, "say a time of day", "12:00"),
    metavar="TIME",
    help="when you begin; first light if not told",
)
@click.option(
    "--to",
    "end",
    type=_read(time_of_day, "say a time of day", "17:30"),
    metavar="TIME",
    help="when you end; the last of dusk if not told",
)
@click.option("--json", is_flag=True, help="print one JSON object, for programs")
@click.option("-o", "--out", metavar="FILE", help="write the strips as a drawing (SVG)")
def run(
    put: Asked,
    day: tuple[date, tzinfo | None] | None,
    place: tuple[float, float] | None,
    facing: float | None,
    start: time | None,
    end: time | None,
    json: bool,
    out: str | None,
) -> str:
    """Return the day in words, as JSON or as a drawing."""
    day = day or (datetime.now().astimezone().date(), None)
    asker = Asker(put.question)
    place = asker.ask("at") if place is None else place
    facing = asker.ask("looking") if facing is None else facing
    asker.ask("sky")
    lacking = [
        Mistake(name, "", why, f"{name} {example}")
        for name, value, why, example in (
            ("--place", place, "say where on earth", "'52.1 N 1.5 W'"),
            ("--facing", facing, "say which way you look", "SW"),
        )
        if value is None
    ]
    if place is None or facing is None or asker.mistakes:
        raise Mistakes(asker.mistakes or lacking)
    from tipsight.hours.skies import under_skies

    courses = under_skies(
        put.question, day, place, facing, (start, end), progress("quarters of an hour"), "--date"
    )
    put.keep()
    if json:
        from tipsight.output.course_form import course_form

        said = [course_form(sky, one) for sky, one in courses]
        return as_json.dumps({"day": said}, indent=2, allow_nan=False) + "\n"
    if out is not None:
        from tipsight.pictures.course_strip import drawing

        picture = drawing(courses)
        return write(out, picture.alone().encode(), picture.words)
    from tipsight.output.course_words import text

    return text(courses)
