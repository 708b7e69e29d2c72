"""A day under the sky that was told, or, where none was, with the sun in and with the sun out."""

from collections.abc import Callable
from datetime import date, time, tzinfo
from functools import partial

from tipsight.errors import Mistake, Mistakes
from tipsight.hours.course import Course, course
from tipsight.hours.moments import moments
from tipsight.inputs.question import Question
from tipsight.inputs.values import Asker

BOTH = ("bright overcast", "clear")
"""Skies that are tried where none was told: the sun in, and the sun out."""


def _told(tell: Callable[[int, int], None], before: int, skies: int, done: int, of: int) -> None:
    tell(before * of + done, skies * of)


def under_skies(
    question: Question,
    day: tuple[date, tzinfo | None],
    place: tuple[float, float],
    looking_deg: float,
    hours: tuple[time | None, time | None] = (None, None),
    tell: Callable[[int, int], None] = lambda done, of: None,
    asks: str = "day",
) -> list[tuple[str, Course]]:
    """Return a day on one swim, each with the name of its sky.

    Parameters
    ----------
    question : Question
        The swim and the float.
    day : tuple
        With its zone, None for that of this computer.
    place : tuple of float
        Latitude and longitude [deg].
    looking_deg : float
        Where he looks, from north through east [deg].
    hours : tuple of time, optional
        From when to when; all that has light if not told.
    tell : callable, optional
        Is told how many of how many moments are done.
    asks : str
        What asks for the day where it is asked.

    Raises
    ------
    Mistakes
        For a day without light, and with everything in the question that is to be mended.
    """
    each = moments(*day, place, *hours)
    if not each:
        why = "the sun then stays 12 deg and more below level, where the sums of light end"
        raise Mistakes([Mistake(asks, f"{day[0]}", why, "'2026-10-15 Europe/London'")])
    asker = Asker(question)
    told = asker.ask("sky")
    if asker.mistakes:
        raise Mistakes(asker.mistakes)
    skies = (told.word,) if told else BOTH
    found = []
    for n, sky in enumerate(skies):
        one = question.with_options(sky=sky)
        done = course(one, each, place, looking_deg, partial(_told, tell, n, len(skies)))
        found.append((f"{sky} sky", done))
    return found
