"""Where the angler stands, the water he fishes and its wind."""

from tipsight.inputs.case import Place, Stream, Wind
from tipsight.inputs.teller import Teller
from tipsight.nature import ripple_height_m, wind_of_ripple_m_s

SHELTER = 0.5
"""What shelter leaves of the wind (judgement)."""
GLASS_SLOPE_VARIANCE = 2e-5
"""Mean square slope of glass on each axis; ten times more for each step of boils (judgement)."""
ROUGHEST_SLOPE_VARIANCE = 2e-2
ROUGH_RIPPLE_M, ROUGH_BOILS = 0.015, 2.0
"""From which only bold bites show through the water's own ups and downs (judgement)."""


def settle_place(teller: Teller) -> Place:
    """Return where the angler stands.

    Parameters
    ----------
    teller : Teller
        What was told.

    Returns
    -------
    Place
        In metres, with the doubt of the distance.

    Examples
    --------
    >>> from tipsight.inputs.question import Question
    >>> settle_place(Teller(Question(distance="40 yd", known="measured", eye="sat")))
    Place(range_m=36.576, range_doubt=0.03, eye_height_m=1.1)
    """
    return Place(
        range_m=teller.take("distance"),
        range_doubt=teller.take("known").number,
        eye_height_m=teller.take("eye"),
    )


def is_rough(wind: Wind, stream: Stream) -> bool:
    """Return whether the water is rough enough that only bold bites show.

    Parameters
    ----------
    wind : Wind
        With the ripple that is seen or the wind that raises one.
    stream : Stream
        With its boils.

    Returns
    -------
    bool
        For a ripple of 15 mm and more, or boily water (judgement).

    Examples
    --------
    >>> is_rough(Wind(ripple_height_m=0.015), Stream()), is_rough(Wind(speed_m_s=2.0), Stream())
    (True, False)
    """
    height_m = wind.ripple_height_m
    if height_m is None:
        height_m = float(ripple_height_m(wind.speed_m_s, wind.fetch_m))
    return height_m >= ROUGH_RIPPLE_M or stream.boil_factor >= ROUGH_BOILS


def settle_wind(teller: Teller) -> Wind:
    """Return the wind that reaches the water, and the ripple where the angler told it.

    Parameters
    ----------
    teller : Teller
        What was told.

    Returns
    -------
    Wind
        A ripple that was told stands before the wind's own; with neither told, fur is taken.

    Examples
    --------
    >>> from tipsight.inputs.question import Question
    >>> settle_wind(Teller(Question(wind="8 m/s", sheltered="yes"))).speed_m_s
    4.0
    """
    ripple_mm = teller.ask("looks")
    told_mm = ripple_mm
    if ripple_mm is None and not teller.knows("wind"):
        ripple_mm = teller.take("looks")
    sheltered = teller.take("sheltered")
    left = SHELTER if sheltered else 1.0
    if ripple_mm is None:
        wind = teller.take("wind", "calm")
    else:
        raised = min(float(wind_of_ripple_m_s(ripple_mm / 1000)) / left, 25.0)
        wind = teller.take("wind", f"{raised:.1f} m/s")
    boils = teller.take("boils", quiet=True)
    like_glass = told_mm == 0 and boils <= 1
    return Wind(
        speed_m_s=wind * left,
        bearing_deg=teller.take("wind_blows").number,
        fetch_m=teller.take("open_water", quiet=ripple_mm is not None),
        ripple_height_m=None if ripple_mm is None else ripple_mm / 1000,
        base_slope_variance=GLASS_SLOPE_VARIANCE
        if like_glass
        else min(GLASS_SLOPE_VARIANCE * 10.0**boils, ROUGHEST_SLOPE_VARIANCE),
    )


def settle_stream(teller: Teller) -> Stream:
    """Return the moving water.

    Parameters
    ----------
    teller : Teller
        What was told.

    Returns
    -------
    Stream
        With the angler's own count of dips where he told it.

    Examples
    --------
    >>> from tipsight.inputs.question import Question
    >>> settle_stream(Teller(Question(pace="brisk", bed="silt", goes_under="3"))).dips_per_min_told
    3.0
    """
    pace, hold = teller.take("pace"), teller.take("run")
    if hold > pace:
        teller.wrong(
            "run",
            f"the water runs at {pace:.2g} m/s; a float cannot be held back by more than that",
            example="checked",
        )
    dips = teller.ask("goes_under")
    return Stream(
        depth_m=teller.take("depth"),
        pace_m_s=pace,
        hold_m_s=hold,
        boil_factor=teller.take("boils", quiet=dips is not None),
        manning_n=teller.take("bed").number,
        temperature_c=teller.take("temperature"),
        water_colour=teller.take("colour").word,
        floating_line=teller.take("line").word == "floating",
        dips_per_min_told=dips,
    )
