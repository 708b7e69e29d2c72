"""How the float rides with one tip, and what it tells of a bite."""

import math

from tipsight.advice.answer import Handling
from tipsight.advice.swim import Swim, painted_mm
from tipsight.afloat import bite, heave, lean, ride
from tipsight.inputs.case import Tip
from tipsight.sight import dip


def _number(value: float) -> float | None:
    return None if math.isnan(value) else value


def handling(swim: Swim, tip: Tip, level: float) -> Handling:
    """Return how the float rides with ``tip`` and what bites it shows.

    Parameters
    ----------
    swim : Swim
        The swim worked out once.
    tip : Tip
        The tip to be on the float.
    level : float
        Visibility level of the tip on the worst water [-].

    Returns
    -------
    Handling
        Forces, margins and dips.
    """
    painted, warm = painted_mm(tip), swim.case.stream.temperature_c
    rides = swim.rides(painted)
    margin = float(ride.ride_margin(tip.showing_mm, rides)[0])
    low, high = bite.sink_force_g(painted, tip.showing_mm, warm)
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
    rigged = swim.rigged(tip)
    held_deg, lift_g = (
        float(x) for x in lean.held_back(rigged, min(swim.stream.hold_m_s, 1.0), painted, warm)
    )
    blown_deg = float(
        lean.wind_lean_deg(
            rigged, swim.case.wind.speed_m_s, painted, max(tip.showing_mm, 2.0), warm
        )
    )
    return Handling(
        sink_force_g=float(low),
        sink_force_high_g=float(high),
        stiffness_g_per_mm=float(heave.stiffness_g_per_mm(painted, warm)),
        ride_margin=margin,
        time_under=float(ride.time_under(margin)),
        dips_per_min=float(ride.dips_per_min(tip.showing_mm, rides)[0]),
        ordinary_dip_s=_number(float(ride.ordinary_dip_s(tip.showing_mm, rides)[0])),
        hidden_mm=min(float(swim.hidden_mm[swim.here]), tip.showing_mm),
        hidden_high_mm=min(float(swim.hidden_high_mm[swim.here]), tip.showing_mm),
        slow_bite_g=_number(float(bite.slow_bite_g(painted, seen, warm))),
        pluck_g=float(bite.pluck_g(rigged, painted, temperature_c=warm)),
        visible_dip_mm=_number(seen),
        lean_deg=_number(
            max(held_deg, blown_deg) if not math.isnan(held_deg + blown_deg) else math.nan
        ),
        upright=bool(lean.upright(rigged, painted, warm)[1]),
        lift_g=_number(lift_g),
    )
