"""Sky, sun and mist: the sun by shadow, by degrees, or by day, time and place."""

from tipsight import tables
from tipsight.inputs.case import Light
from tipsight.inputs.teller import Teller

NEAR_DEG = 12.0
"""How far two ways of telling the sun may differ before they clash (judgement)."""


def settle_light(teller: Teller) -> Light:
    """Return the light.

    Parameters
    ----------
    teller : Teller
        What was told.

    Returns
    -------
    Light
        The direct sun is off under an overcast whatever was told.

    Examples
    --------
    >>> from tipsight.inputs.question import Question
    >>> light = settle_light(Teller(Question(sky="clear", shadow="twice", sun_is="behind me")))
    >>> light.sun_height_deg, light.sun_bearing_deg, light.beam
    (27.0, 180.0, True)
    """
    name = teller.take("sky").word
    sky = next(row for row in tables.rows("skies") if row["name"] == name)
    overcast = sky["beam_asked"] != "yes"
    out = teller.take("sun_out", sky["beam"], quiet=overcast)
    height, bearing = _sun(teller)
    return Light(
        sky_type=int(sky["type"]),
        turbidity=float(sky["turbidity"]),
        beam=out and not overcast,
        sun_height_deg=height,
        sun_bearing_deg=bearing,
        visibility_m=teller.take("mist"),
    )


def _sun(teller: Teller) -> tuple[float, float]:
    seen = _by_the_clock(teller)
    height, shadow = teller.ask("sun_height"), teller.ask("shadow")
    heights = [
        ("sun_height", height),
        ("when", seen and seen[0]),
        ("shadow", shadow and shadow.number),
    ]
    told = [(key, value) for key, value in heights if value is not None]
    for key, value in told[1:]:
        if abs(value - told[0][1]) > NEAR_DEG:
            teller.wrong(
                key,
                f"it puts the sun at {value:.0f} deg, but {told[0][0]} says "
                f"{told[0][1]:.0f}; leave one of them out",
            )
    sun_height = told[0][1] if told else teller.take("sun_height")

    bearing, word = teller.ask("sun_bearing"), teller.ask("sun_is")
    looking = teller.ask("looking")
    clock = None
    if seen and looking is not None:
        clock = abs((seen[1] - looking + 180.0) % 360.0 - 180.0)
    bearings = [("sun_bearing", bearing), ("looking", clock), ("sun_is", word and word.number)]
    told = [(key, value) for key, value in bearings if value is not None]
    for key, value in told[1:]:
        if abs(value - told[0][1]) > 45:
            teller.wrong(
                key,
                f"it puts the sun {value:.0f} deg from the line along which you look, "
                f"but {told[0][0]} says {told[0][1]:.0f}; leave one of them out",
            )
    return sun_height, told[0][1] if told else teller.take("sun_is").number


def _by_the_clock(teller: Teller) -> tuple[float, float] | None:
    when, at = teller.ask("when"), teller.ask("at")
    if when is None:
        return None
    if at is None:
        if not teller.knows("at"):
            teller.wrong(
                "at",
                "a day and time need a place; say latitude and longitude in degrees",
                said="",
                example="52.1 N 1.5 W",
            )
        return None
    from tipsight.inputs import sun

    height, azimuth = sun.position(when, *at)
    if height < -12:
        teller.wrong(
            "when",
            f"the sun then stands {-height:.0f} deg below level; the sums end at 12, "
            "the last of dusk",
            example="2026-10-15 17:00 UTC",
        )
        return None
    return float(height), float(azimuth)
