"""The jobs of a season as plain values, for programs."""

from collections.abc import Sequence
from typing import Any

from tipsight.advice import as_values
from tipsight.output.json_form import block_form, number
from tipsight.season.covering import Chosen
from tipsight.season.jobs import Carry, Gap, Heavy, Idle
from tipsight.season.making import Makings
from tipsight.season.swims import Fished

Told = dict[str, Any]


def swims_form(swims: Sequence[Fished]) -> list[Told]:
    """Return the swims; all other places count from nought in this list."""
    return [{"name": one.name, "often": number(one.often)} for one in swims]


def _chosen(one: Chosen) -> Told:
    return {
        "worth": number(one.worth),
        "could_be": number(one.could_be),
        "adds": [number(x) for x in one.adds],
    }


def gaps_form(gaps: Sequence[Gap], heavy: Sequence[Heavy], numbers: Sequence[int]) -> Told:
    """Return the swims that no float serves, with the nearest, and those that only a heavy one serves.

    Floats by their numbers in the box.
    """
    return {
        "unserved": [
            {
                "swim": one.swim,
                "nearest": None if one.nearest is None else numbers[one.nearest],
                "block": block_form(one.block) if one.block else None,
                "cures": as_values.plain(one.cures),
            }
            for one in gaps
        ],
        "heavy_only": [
            {
                "swim": one.swim,
                "lightest": numbers[one.lightest],
                "shot_share": number(one.shot_share),
            }
            for one in heavy
        ],
    }


def makings_form(told: Makings) -> Told:
    """Return what to make for each number, every float as a question."""
    return {
        "tried": told.tried,
        "open": list(told.open),
        "never": list(told.never),
        "by_count": [
            {
                "count": one.count,
                **_chosen(one.chosen),
                "floats": [
                    {
                        "question": as_values.plain(made.question().told()),
                        "sink_force_g": number(made.sink_force_g),
                        "closes": list(closes),
                    }
                    for made, closes in zip(one.floats, one.closes, strict=True)
                ],
            }
            for one in told.by_count
        ],
    }


def carry_form(told: Carry, numbers: Sequence[int]) -> Told:
    """Return what to carry, by its number in the box, and what one less gives up."""
    fewest, fewer = ([numbers[n] for n in one.which] for one in (told.fewest, told.one_fewer))
    return {
        "fewest": {"floats": fewest, **_chosen(told.fewest)},
        "least": told.least,
        "one_fewer": {"floats": fewer, **_chosen(told.one_fewer)},
        "unserved": list(told.unserved),
        "given_up": list(told.given_up),
        "for": [list(each) for each in told.for_],
    }


def idle_form(told: Sequence[Idle], numbers: Sequence[int]) -> list[Told]:
    """Return the floats that no swim needs, each with one that serves all it serves, by their numbers."""
    return [
        {
            "float": numbers[one.float_],
            "instead": None if one.instead is None else numbers[one.instead],
        }
        for one in told
    ]
