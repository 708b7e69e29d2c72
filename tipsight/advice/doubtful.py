"""Where the answer leaves the range in which its sums are known, and what was told oddly."""

from tipsight.advice.answer import Block
from tipsight.advice.bench import Shelf
from tipsight.advice.facts import Limit, Note, Warn
from tipsight.advice.handling import MOST_HOLD_M_S
from tipsight.advice.limits import LEAST_WET_MM
from tipsight.advice.swim import Swim
from tipsight.afloat import heave, hidden
from tipsight.afloat.chop import STEEPEST
from tipsight.checks import Outside
from tipsight.inputs.case import WeighedFloat
from tipsight.load import law, line
from tipsight.load.tips import showing_diameter_mm
from tipsight.scene.sky_scale import ZENITH_FORMULA_TO_DEG
from tipsight.sight import detect
from tipsight.sight.eye import YOUNGEST_YEARS

COLOUR_CARRIES = 0.5
"""Share of the level's energy from which colour is said to carry it (judgement)."""
YOUNGEST_SEA_M_S = 3.0
"""Below this wind the fetch laws have no data on rivers."""
CROSS_DEG = 45.0  # waves that run more than this off the line of sight run across it
LEAST_CROSS_M = 0.005  # lower waves than this do not matter
LAST_OVERCAST = 6
"""Types of sky to here take their light from another formula."""
MOST_WIND_M_S = 14.0
"""Up to which the slopes of the sea were measured (Cox and Munk 1954)."""
WEIR_BOILS = 3.0
ODD_WEIGHT = 2.5
"""How many times heavier than its like a float may be before it is asked about (judgement)."""
ODD_SHOT_MM = 5.0
"""How far the shot told may set the tip from how it was told to show (judgement)."""
BEST_MAR_ARCMIN = 1.0


def warnings(swim: Swim, shelf: Shelf, lead: Block) -> tuple[Warn, ...]:
    """Return what a reader should know before trusting a number, the most telling first.

    ``lead`` is the tip that the answer leads with.
    """
    found = [*_float(swim, lead), *_sight(swim, lead), *_held(swim)]
    if shelf.left_out:
        found.append(Warn(Note.DIVISIONS_LEFT_OUT, {"count": shelf.left_out}))
    return tuple(found)


def asked_again(swim: Swim) -> tuple[Warn, ...]:
    """Return what was told that a reader should look at again before anything else."""
    told, box, found = swim.case.float_, swim.case.box, []
    if any(stretch.sun_ahead for stretch in swim.case.stretches):
        found.append(Warn(Note.SUN_LANE))
    if isinstance(told, WeighedFloat) and told.weighs_g:
        usual_g = swim.pattern.mass_share * swim.pull_g
        if told.weighs_g > ODD_WEIGHT * usual_g:
            numbers = {"weighs_g": told.weighs_g, "usual_g": usual_g}
            found.append(Warn(Note.WEIGHT_ODD, numbers))
    if box.hanging:
        takes_g, hangs_g = swim.pull_g / swim.wet_share, line.mass_g(swim.hung)
        painted_mm = showing_diameter_mm(swim.case.tip)
        warm = swim.case.stream.temperature_c
        off_g = ODD_SHOT_MM * float(heave.stiffness_g_per_mm(painted_mm, warm)) / swim.wet_share
        if abs(hangs_g - takes_g) > off_g:
            found.append(Warn(Note.SHOT_ODD, {"hangs_g": hangs_g, "takes_g": takes_g}))
    if len(law.usable(box.shot)) < len(box.shot):
        found.append(Warn(Note.LEAD_LEFT_OUT))
    if not (box.stock or box.inserts):
        found.append(Warn(Note.NO_STOCK))
    return tuple(found)


def _float(swim: Swim, lead: Block) -> list[Warn]:
    handled, wet_mm = lead.handling, lead.tip.wet_mm
    lit = {lead.tip.light_stick, swim.case.tip.light_stick} != {"none"}
    held = swim.stream.hold_m_s > 0 and handled.lift_g is not None
    falls = handled.falls_over
    met: list[tuple[bool, Warn]] = [
        (falls, Warn(Note.FALLS_OVER)),
        (not handled.upright and not falls, Warn(Note.TOP_HEAVY)),
        (handled.lift_g is None and not falls, Warn(Note.LIES_FLAT)),
        (held, Warn(Note.HELD_LIFTS, {"lift_g": handled.lift_g or 0.0})),
        (not swim.case.stream.floating_line, Warn(Note.SINKING_LINE)),
        (wet_mm < LEAST_WET_MM, Warn(Note.SHOULDER_OUT, {"wet_mm": wet_mm})),
        (lit, Warn(Note.LIGHT_NOT_RECKONED)),
        (handled.ordinary_dip_s is None, Warn(Note.HARDLY_DIPS)),
        (handled.visible_dip_mm is None, Warn(Note.NO_DIP_SEEN)),
    ]
    wished = [
        Warn(Note.AS_IT_IS, {"limit": one.limit, "value": one.value, "allowed": one.allowed})
        for one in lead.fails
        if one.as_it_is and one.limit is not Limit.BALANCE
    ]
    return [*wished, *(told for is_met, told in met if is_met)]


def _sight(swim: Swim, lead: Block) -> list[Warn]:
    seen, wind = lead.visibility, swim.case.wind
    carried = tuple(s.name for s in seen.by_background if s.colour_share > COLOUR_CARRIES)
    lane = any(stretch.sun_ahead for stretch in swim.case.stretches)
    to_the_end = None in (*(s.goes_at_m for s in seen.by_background), seen.gone_at_m)
    light_air = wind.ripple_height_m is None and 0 < wind.speed_m_s < YOUNGEST_SEA_M_S
    across = wind.bearing_deg > CROSS_DEG and swim.sea.height_m > LEAST_CROSS_M
    met = [
        (bool(carried), Warn(Note.COLOUR_CARRIES, {"waters": carried})),
        (to_the_end, Warn(Note.SEEN_TO_THE_END, {"farthest_m": float(swim.range_m[-1])})),
        (light_air, Warn(Note.LIGHT_AIR)),
        (lane, Warn(Note.LANE_GLASSES)),
        (across, Warn(Note.WAVES_ACROSS)),
    ]
    metres = float(swim.range_m[swim.here])
    tip = detect.outside_domain(
        lead.painted_mm, lead.tip.showing_mm, metres, swim.adaptation_cd_m2
    )
    streaks: dict[Outside, tuple[str, ...]] = {}
    for water in (swim.waters[key] for key in swim.judged):
        for outside in water.outside:
            names = (*streaks.get(outside, ()), water.name)
            streaks[outside] = tuple(dict.fromkeys(names))
    return [
        *(told for is_met, told in met if is_met),
        *(_outside(one) for one in tip),
        *(_outside(one, names) for one, names in streaks.items()),
    ]


def _outside(one: Outside, waters: tuple[str, ...] = ()) -> Warn:
    return Warn(Note.OUTSIDE, {**vars(one), "waters": waters})


def _held(swim: Swim) -> list[Warn]:
    """Return what was told but is held at the end of what the sums know."""
    place, light, wind = swim.case.place, swim.case.light, swim.case.wind
    angler, stream = swim.case.angler, swim.case.stream
    nearest, farthest = (place.range_m * (1 + s * place.range_doubt) for s in (-1, 1))
    ends_m = float(swim.range_m[0]), float(swim.range_m[-1])
    steep = 1e3 * swim.sea.height_m >= (1 - 1e-6) * STEEPEST * swim.sea.peak_wavelength_mm
    clear_high = light.sky_type > LAST_OVERCAST and light.sun_height_deg > ZENITH_FORMULA_TO_DEG
    blown_m_s = 0.0 if wind.ripple_height_m is not None else wind.speed_m_s
    crests = hidden.outside_domain(swim.sea, swim.range_m[swim.here], place.eye_height_m)
    met = [
        (
            farthest > ends_m[1] or nearest < ends_m[0],
            Warn(Note.DISTANCE_BEYOND, {"nearest_m": ends_m[0], "farthest_m": ends_m[1]}),
        ),
        (steep, Warn(Note.BREAKING)),
        (blown_m_s > MOST_WIND_M_S, Warn(Note.STRONG_WIND, {"limit_m_s": MOST_WIND_M_S})),
        (stream.boil_factor > WEIR_BOILS, Warn(Note.HARDER_THAN_WEIR)),
        (stream.hold_m_s > MOST_HOLD_M_S, Warn(Note.HELD_HARD, {"limit_m_s": MOST_HOLD_M_S})),
        (bool(crests), Warn(Note.CRESTS_BEYOND)),
        (clear_high, Warn(Note.HIGH_SUN, {"limit_deg": ZENITH_FORMULA_TO_DEG})),
        (light.sun_height_deg < 0, Warn(Note.AFTER_SUNSET)),
        (angler.mar_arcmin < BEST_MAR_ARCMIN, Warn(Note.SHARP_EYES)),
        (
            angler.age_years < YOUNGEST_YEARS,
            Warn(Note.YOUNG_EYES, {"limit_years": YOUNGEST_YEARS}),
        ),
    ]
    return [told for is_met, told in met if is_met]
