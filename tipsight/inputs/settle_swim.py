"""Where the angler stands, the water he fishes, its wind and its light."""

import math
from dataclasses import replace

from tipsight import tables
from tipsight.inputs.case import Light, Place, Stream, Wind
from tipsight.inputs.quantities import in_paces
from tipsight.inputs.values import Asker

SHELTER = 0.5
"""What shelter leaves of the wind (judgement)."""
GLASS_SLOPE_VARIANCE = 2e-5
"""Mean square slope of glass on each axis; ten times more for each step of boils (judgement)."""
ROUGHEST_SLOPE_VARIANCE = 2e-2
BOIL_DOUBT, COUNTED_DOUBT = math.exp(0.40), math.exp(0.12)
"""How well the boils are known (x/÷): by a word (judgement), and from a count of the tip in hand (what six
dips in two minutes leave, by `learning.boiling`)."""
SAME_SUN_DEG, SAME_SIDE_DEG = 12.0, 45.0
"""How far two ways of telling the sun's height and its side may differ (judgement)."""
LAST_DUSK_DEG = -12.0
"""The sums of light end there."""


def settle_place(asker: Asker) -> Place:
    """Return where the angler stands.

    >>> from tipsight.inputs.question import Question
    >>> settle_place(Asker(Question(distance="40 yd", known="measured", eye="sat")))
    Place(range_m=36.576, range_doubt=0.03, eye_height_m=1.1)
    """
    paced = "paced" if in_paces(asker.said("distance")) else None
    return Place(
        range_m=asker.take("distance"),
        range_doubt=asker.take("known", paced).number,
        eye_height_m=asker.take("eye"),
    )


def settle_wind(asker: Asker) -> Wind:
    """Return the wind that reaches the water; a ripple that was told stands before the wind's own.

    No wind is worked back from a ripple: the bed makes waves too.

    >>> from tipsight.inputs.question import Question
    >>> settle_wind(Asker(Question(wind="8 m/s", sheltered="yes"))).speed_m_s
    4.0
    """
    ripple_mm = asker.ask("looks")
    told_mm = ripple_mm
    if ripple_mm is None and not asker.knows("wind"):
        ripple_mm = asker.take("looks")
    sheltered = asker.take("sheltered")
    left = SHELTER if sheltered else 1.0
    wind = asker.take("wind", "calm")
    boils = asker.take("boils", quiet=True)
    like_glass = told_mm == 0 and boils <= 1
    return Wind(
        speed_m_s=wind * left,
        bearing_deg=asker.take("wind_blows").number,
        fetch_m=asker.take("open_water", quiet=ripple_mm is not None),
        ripple_height_m=None if ripple_mm is None else ripple_mm / 1000,
        base_slope_variance=GLASS_SLOPE_VARIANCE
        if like_glass
        else min(GLASS_SLOPE_VARIANCE * 10.0**boils, ROUGHEST_SLOPE_VARIANCE),
    )


def settle_stream(asker: Asker) -> Stream:
    """Return the moving water, with the angler's own count of dips where he told it.

    >>> from tipsight.inputs.question import Question
    >>> settle_stream(Asker(Question(pace="brisk", bed="silt", goes_under="3"))).dips_per_min_told
    3.0
    """
    pace, hold = asker.take("pace"), asker.take("run")
    if hold > pace:
        asker.wrong(
            "run",
            f"the water runs at {asker.spoken.speed(pace)}; a float cannot be held back by more than that",
            example="checked",
        )
    dips = asker.ask("goes_under")
    doubt = BOIL_DOUBT if dips is None else COUNTED_DOUBT
    if dips is None and not asker.knows("boils"):
        doubt = asker.learnt.boil_doubt or doubt
    return Stream(
        depth_m=asker.take("depth"),
        pace_m_s=pace,
        hold_m_s=hold,
        boil_factor=asker.take("boils", quiet=dips is not None),
        boil_doubt=doubt,
        manning_n=asker.take("bed").number,
        temperature_c=asker.take("temperature"),
        water_colour=asker.take("colour").word,
        floating_line=asker.take("line").word == "floating",
        dips_per_min_told=dips,
    )


def settle_light(asker: Asker) -> Light:
    """Return the light; the direct sun is off under an overcast whatever was told.

    >>> from tipsight.inputs.question import Question
    >>> light = settle_light(Asker(Question(sky="clear", shadow="twice", sun_is="behind me")))
    >>> light.sun_height_deg, light.sun_bearing_deg, light.beam
    (27.0, 180.0, True)
    """
    name = asker.take("sky").word
    sky = tables.row("skies", name, "sky")
    overcast = not sky["beam_asked"]
    out = asker.take("sun_out", "yes" if sky["beam"] else "no", quiet=overcast)
    height, bearing = _sun(asker)
    return Light(
        sky_type=sky["type"],
        turbidity=sky["turbidity"],
        beam=out and not overcast,
        sun_height_deg=height,
        sun_bearing_deg=bearing,
        visibility_m=asker.take("mist"),
    )


def other_lights(asker: Asker, light: Light) -> tuple[Light, ...]:
    """Return what the light may turn to while he fishes.

    Cloud thickens and thins, so either overcast may turn to the other; under broken cloud the sun
    comes and goes unless he said which holds. The skies that turn to each other are those of one
    group in skies.csv (judgement).
    """
    sky = tables.row("skies", asker.take("sky", quiet=True).word, "sky")
    if sky["turns_to"]:
        other = tables.row("skies", str(sky["turns_to"]), "sky")
        return (replace(light, sky_type=other["type"], turbidity=other["turbidity"]),)
    if sky["sun_comes_and_goes"] and not asker.knows("sun_out") and light.sun_height_deg > 0:
        return (replace(light, beam=not light.beam),)
    return ()


def _sun(asker: Asker) -> tuple[float, float]:
    seen = _by_the_clock(asker)
    height, shadow = asker.ask("sun_height"), asker.ask("shadow")
    heights = [
        ("sun_height", height),
        ("when", seen and seen[0]),
        ("shadow", shadow and shadow.number),
    ]
    told = [(key, value) for key, value in heights if value is not None]
    for key, value in told[1:]:
        if abs(value - told[0][1]) > SAME_SUN_DEG:
            asker.wrong(
                key,
                f"it puts the sun at {value:.0f} deg, but {told[0][0]} says "
                f"{told[0][1]:.0f}; leave one of them out",
            )
    sun_height = told[0][1] if told else asker.take("sun_height")

    bearing, word = asker.ask("sun_bearing"), asker.ask("sun_is")
    looking = asker.ask("looking")
    clock = None
    if seen and looking is not None:
        clock = abs((seen[1] - looking + 180.0) % 360.0 - 180.0)
    bearings = [("sun_bearing", bearing), ("looking", clock), ("sun_is", word and word.number)]
    told = [(key, value) for key, value in bearings if value is not None]
    for key, value in told[1:]:
        if abs(value - told[0][1]) > SAME_SIDE_DEG:
            asker.wrong(
                key,
                f"it puts the sun {value:.0f} deg from the line along which you look, "
                f"but {told[0][0]} says {told[0][1]:.0f}; leave one of them out",
            )
    return sun_height, told[0][1] if told else asker.take("sun_is").number


def _by_the_clock(asker: Asker) -> tuple[float, float] | None:
    when, at = asker.ask("when"), asker.ask("at")
    if when is None:
        return None
    if at is None:
        if not asker.knows("at"):
            asker.wrong(
                "at",
                "a day and time need a place; say latitude and longitude in degrees",
                said="",
                example="52.1 N 1.5 W",
            )
        return None
    from tipsight.inputs import sun

    height, azimuth = sun.position(when, *at)
    if height < LAST_DUSK_DEG:
        asker.wrong(
            "when",
            f"the sun then stands {-height:.0f} deg below level; the sums end at 12, "
            "the last of dusk",
            example="2026-10-15 17:00 UTC",
        )
        return None
    return float(height), float(azimuth)
