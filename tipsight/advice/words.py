"""Warnings: where the answer leaves the range in which its sums are known."""

from tipsight.advice.answer import Block
from tipsight.advice.bench import Shelf
from tipsight.advice.limits import LEAST_WET_MM
from tipsight.advice.swim import Swim, painted_mm
from tipsight.afloat import hidden
from tipsight.afloat.chop import STEEPEST
from tipsight.checks import Outside
from tipsight.inputs.case import WeighedFloat
from tipsight.load import law
from tipsight.scene.sky_scale import ZENITH_FORMULA_TO_DEG
from tipsight.sight import detect

COLOUR_CARRIES = 0.5
"""Share of the level's energy from which colour is said to carry it (judgement)."""
YOUNGEST_SEA_M_S = 3.0
"""Below this wind the fetch laws have no data on rivers."""
CROSS_DEG = 45.0
LAST_OVERCAST = 6
"""Types of sky to here take their light from another formula."""
MOST_WIND_M_S = 14.0
"""Up to which the slopes of the sea were measured (Cox and Munk 1954)."""
MOST_HOLD_M_S = 1.0
WEIR_BOILS = 3.0
ODD_WEIGHT = 2.5
"""How many times heavier than its like a float may be before it is asked about (judgement)."""
BEST_MAR_ARCMIN, YOUNGEST_YEARS = 1.0, 23.0
_AS_FOR = {
    "peak_wavelength_mm": ("length", "a longer ripple", "a shorter ripple"),
    "slope_rms": ("slope", "a steeper ripple", "a flatter ripple"),
    "bank_height_deg": ("height", "a higher far bank", "a lower far bank"),
    "look_down_deg": ("look-down", "a steeper look", "a flatter look"),
}
"""What of a water's streaks is held; as what it is taken from below, and from above."""
_CHECKED = {"width_arcmin": "width", "height_arcmin": "height", "adaptation_cd_m2": "light"}


def warnings(swim: Swim, shelf: Shelf, lead: Block) -> tuple[str, ...]:
    """Return what a reader should know before trusting a number.

    Parameters
    ----------
    swim : Swim
        The swim worked out once.
    shelf : Shelf
        All that could be fitted.
    lead : Block
        The tip that the answer leads with.

    Returns
    -------
    tuple of str
        One sentence each, the most telling first.
    """
    found = [*_float(swim, lead), *_sight(swim, lead), *_held(swim)]
    if shelf.left_out:
        found.append(
            f"{shelf.left_out} ways to divide a tip were not tried: a band would be under 5 mm or "
            "too small to tell apart at that distance"
        )
    return tuple(dict.fromkeys(found))


def asked_again(swim: Swim) -> tuple[str, ...]:
    """Return what was told that a reader should look at again before anything else.

    Parameters
    ----------
    swim : Swim
        The swim worked out once.

    Returns
    -------
    tuple of str
        One sentence each.
    """
    told, box, found = swim.case.float_, swim.case.box, []
    if isinstance(told, WeighedFloat) and told.weighs_g:
        usual_g = swim.pattern.mass_share * swim.pull_g
        if told.weighs_g > ODD_WEIGHT * usual_g:
            found.append(
                f"you told that the float weighs {told.weighs_g:.2g} g, where one of its kind that "
                f"takes so much weighs about {usual_g:.1f} g: weigh it again, without its shot"
            )
    if len(law.usable(box.shot)) < len(box.shot):
        found.append(
            "of your lead only No 8 and smaller is counted on, as larger lead is banned on many "
            "waters: for a bulk you need shot of another metal; ask again with it"
        )
    if not (box.stock or box.inserts):
        found.append("you have no tip stock: you need what is advised for the bench")
    return tuple(found)


def _float(swim: Swim, lead: Block) -> list[str]:
    case, handled, found = swim.case, lead.handling, []
    if not handled.upright:
        found.append("this tip makes the float top-heavy")
    if handled.lift_g is None:
        found.append("held so hard this float lies flat: run it freer, or take a bigger one")
    elif swim.stream.hold_m_s > 0:
        found.append(
            f"holding back lifts the float by {handled.lift_g:.2f} g: over-shot it by as much, and "
            "do not trust a fine setting"
        )
    if not case.stream.floating_line:
        found.append("a sinking line bows and drags the tip under: grease it, or let more show")
    if lead.tip.wet_mm < LEAST_WET_MM:
        wet = f"only {lead.tip.wet_mm:.0f} mm" if lead.tip.wet_mm >= 0.5 else "none"
        found.append(
            f"with {wet} of the tip under water the body's shoulder lifts out in a ripple and the "
            "float rides less evenly"
        )
    if lead.tip.light_stick != "none":
        found.append(
            "the glow of the light stick is not in these sums: they tell how the painted tip is "
            "seen by what daylight is left"
        )
    if handled.ordinary_dip_s is None:
        found.append("this tip hardly ever dips by itself, so no length of dip is given")
    if handled.visible_dip_mm is None:
        found.append("seen so poorly no dip can be told, so no slow bite is given")
    return found


def _sight(swim: Swim, lead: Block) -> list[str]:
    case, found = swim.case, []
    carried = [s.name for s in lead.visibility.by_background if s.colour_share > COLOUR_CARRIES]
    if carried:
        found.append(
            f"on {' and '.join(carried)} water it is colour, not brightness, that shows this tip: "
            "the less certain half of the sums"
        )
    seen_at = [sight.goes_at_m for sight in lead.visibility.by_background]
    if None in (*seen_at, lead.visibility.gone_at_m):
        found.append("on some water it is still seen at 100 m, where the sums end")
    wind = case.wind
    if wind.ripple_height_m is None and 0 < wind.speed_m_s < YOUNGEST_SEA_M_S:
        found.append("so light a wind makes cat's-paws, no even ripple: the ride is a rough guess")
    if wind.bearing_deg > CROSS_DEG and swim.sea.height_m > 0.005:
        found.append("waves that run across the line of sight: the doubt of the sight is larger")
    light = min(float(swim.waters[name].adaptation_cd_m2[swim.here]) for name in swim.judged)
    found += [
        f"the {_CHECKED[o.name]} of {_number(o.value)} {o.unit} is outside {o.low:g} to {o.high:g} "
        f"{o.unit}, where the sum was checked"
        for o in detect.outside_domain(
            painted_mm(lead.tip), lead.tip.showing_mm, swim.range_m[swim.here], light
        )
    ]
    waters: dict[str, list[str]] = {}
    for name in swim.judged:
        for outside in swim.waters[name].outside:
            words = _streaks_held(outside)
            waters.setdefault(words, []).append(name)
    found += [f"{' and '.join(names)} water: {words}" for words, names in waters.items()]
    return found


def _number(value: float) -> str:
    return f"{value:.2g}" if value < 100 else f"{value:.0f}"


def _streaks_held(outside: Outside) -> str:
    says, from_below, from_above = _AS_FOR[outside.name]
    unit = outside.unit and f" {outside.unit}"
    return (
        f"its streaks are taken as for {from_below if outside.value < outside.low else from_above} "
        f"({says} {_number(outside.value)}{unit}; known from {outside.low:g} to {outside.high:g}{unit})"
    )


def _held(swim: Swim) -> list[str]:
    """Say what was told but is held at the end of what the sums know."""
    place, light, wind, angler = (
        swim.case.place,
        swim.case.light,
        swim.case.wind,
        swim.case.angler,
    )
    nearest, farthest = (place.range_m * (1 + s * place.range_doubt) for s in (-1, 1))
    steep = 1e3 * swim.sea.height_m >= (1 - 1e-6) * STEEPEST * swim.sea.peak_wavelength_mm
    clear_high = light.sky_type > LAST_OVERCAST and light.sun_height_deg > ZENITH_FORMULA_TO_DEG
    sayings = {
        "the distance may lie outside 3 to 100 m, where the sums end: the range of the level is "
        "wider than is said": farthest > swim.range_m[-1] or nearest < swim.range_m[0],
        "so steep a sea breaks: its waves are taken as a tenth as high as they are long": steep,
        f"no slopes of water were measured in a wind over {MOST_WIND_M_S:g} m/s": wind.speed_m_s
        > MOST_WIND_M_S,
        "water that boils more than a weir is taken to look like a weir's": swim.case.stream.boil_factor
        > WEIR_BOILS,
        "held back by more than 1 m/s: how it leans and lifts is that at 1 m/s": swim.case.stream.hold_m_s
        > MOST_HOLD_M_S,
        "what the crests hide at worst is not known for so flat or so steep a look": bool(
            hidden.outside_domain(swim.sea, swim.range_m[swim.here], place.eye_height_m)
        ),
        f"with the sun over {ZENITH_FORMULA_TO_DEG:g} deg a clear sky is not known so well": clear_high,
        "after sunset the sky is taken to be spread as at sunset: a judgement": light.sun_height_deg
        < 0,
        "sight better than 6/6 counts as 6/6": angler.mar_arcmin < BEST_MAR_ARCMIN,
        "eyes under 23 count as 23": angler.age_years < YOUNGEST_YEARS,
    }
    return [words for words, held in sayings.items() if held]
