"""How the float rides with one tip, and what it tells of a bite."""

import math
from dataclasses import replace
from functools import lru_cache

from tipsight.advice.answer import Handling
from tipsight.advice.swim import Swim, ride_on
from tipsight.afloat import bite, heave, lean, ride
from tipsight.afloat.boils import MOST_BOIL
from tipsight.afloat.rig import Rig
from tipsight.inputs.case import Stream, Tip
from tipsight.sight import dip

MOST_HOLD_M_S = 1.0
"""Held back harder than this, a float leans and lifts as at this: where `lean` ends."""
LEAST_IN_WIND_MM = 2.0
"""Shorter tips catch the wind as one of this: where `lean` begins."""


def _number(value: float) -> float | None:
    return None if math.isnan(value) else value


@lru_cache(maxsize=64)
def _held_back(
    rigged: Rig, hold_m_s: float, painted_mm: float, temperature_c: float
) -> tuple[float, float]:
    """Return lean and lift of one float, which is looked at on several waters and from above."""
    lean_deg, lift_g = lean.held_back(rigged, hold_m_s, painted_mm, temperature_c)
    return float(lean_deg), float(lift_g)


@lru_cache(maxsize=64)
def _boiling(stream: Stream, doubt: float) -> tuple[Stream, Stream]:
    """Return the stream as it would be if it boiled as much more, and as much less."""
    most, least = (min(stream.boil_factor * times, MOST_BOIL) for times in (doubt, 1.0 / doubt))
    return replace(stream, boil_factor=most), replace(stream, boil_factor=least)


def handling(swim: Swim, tip: Tip, painted_mm: float, rigged: Rig, level: float) -> Handling:
    """Return how the float rides with a tip and what bites it shows, seen at a level."""
    warm = swim.case.stream.temperature_c
    rides = swim.rides(painted_mm)
    margin = float(ride.ride_margin(tip.showing_mm, rides)[0])
    doubt = swim.stream.boil_doubt
    rougher, calmer = (
        float(ride.ride_margin(tip.showing_mm, ride_on(swim.rig, swim.sea, stream, (painted_mm,)))[0])
        for stream in _boiling(swim.stream, doubt)
    )
    low, high = bite.sink_force_g(painted_mm, tip.showing_mm, warm)
    seen = float(
        dip.visible_dip_mm(
            level,
            tip.showing_mm,
            rides.rms_mm[0],
            swim.range_m[swim.here],
            swim.eye,
            swim.adaptation_cd_m2,
        )
    )
    held_deg, lift_g = _held_back(
        rigged, min(swim.stream.hold_m_s, MOST_HOLD_M_S), painted_mm, warm
    )
    blown_deg = float(
        lean.wind_lean_deg(
            rigged,
            swim.case.wind.speed_m_s,
            painted_mm,
            max(tip.showing_mm, LEAST_IN_WIND_MM),
            warm,
        )
    )
    stands = float(lean.uprightness(rigged, painted_mm, warm))
    lies = math.isnan(held_deg + blown_deg)
    return Handling(
        sink_force_g=float(low),
        sink_force_high_g=float(high),
        stiffness_g_per_mm=float(heave.stiffness_g_per_mm(painted_mm, warm)),
        ride_margin=margin,
        ride_margin_low=min(margin, rougher),
        ride_margin_high=max(margin, calmer),
        time_under=float(ride.time_under(margin)),
        dips_per_min=float(ride.dips_per_min(tip.showing_mm, rides)[0]),
        ordinary_dip_s=_number(float(ride.ordinary_dip_s(tip.showing_mm, rides)[0])),
        hidden_mm=min(float(swim.hidden_mm[swim.here]), tip.showing_mm),
        hidden_high_mm=min(float(swim.hidden_high_mm[swim.here]), tip.showing_mm),
        slow_bite_g=_number(float(bite.slow_bite_g(painted_mm, seen, warm))),
        pluck_g=float(bite.pluck_g(rigged, painted_mm, temperature_c=warm)),
        visible_dip_mm=_number(seen),
        lean_deg=None if lies else max(held_deg, blown_deg),
        uprightness=stands,
        upright=stands >= lean.SAFE,
        lift_g=_number(lift_g),
    )
