"""What an answer warns of, in words: where it leaves what is known, and what stands in the way."""

from collections.abc import Callable

from tipsight.advice.answer import Answer, Nearly
from tipsight.advice.facts import Cure, Failure, Limit, Note, Warn
from tipsight.inputs.case import Case
from tipsight.output import names
from tipsight.output.measures import ANGLER, Reader, figures, grams, listed, tenths
from tipsight.output.telling import cures, failure
from tipsight.sight import grades


def _breaks(told: Failure) -> str:
    value, allowed = told.value, told.allowed
    match told.limit:
        case Limit.RIDE:
            return f"its ride margin is {tenths(value):.1f} where {allowed:g} is the least"
        case Limit.BITE:
            return (
                f"it takes {value:.2f} g to sink where {allowed:.2f} g is the most for such bites"
            )
        case Limit.STRENGTH:
            return (
                f"it would show {value:g} mm where {allowed:.0f} mm is the most that it can stand"
            )
        case Limit.BODY:
            return f"it is {value:g} mm thick where the body takes {allowed:.1f} mm"
        case Limit.ROOM:
            return f"{value:.0f} mm of it must be glued in where the body has {allowed:.0f} mm"
        case Limit.LOAD:
            return f"it leaves {grams(value)} for shot"
        case _:
            return failure(told)


def nearly(told: Nearly, reader: Reader = ANGLER) -> str:
    """Return a tip that could be seen, the limit that it breaks, and the cure."""
    return (
        f"{names.fitting(told.block.tip)} could be seen, but {_breaks(told.failure)}; "
        f"{cures(told.cures, None, reader)}"
    )


_SIGHT_CURES = (Cure.COME_CLOSER, Cure.STAND_HIGHER, Cure.OTHER_STRETCH)
_LESS_SURE = {
    "peak_wavelength_mm": ("ripple as short as this", "waves as long as these"),
    "slope_rms": ("water as calm as this", "water as steep as this"),
    "bank_height_deg": ("a far bank as low as this", "a far bank as high as this"),
    "look_down_deg": ("so flat a look", "so steep a look"),
    "width_arcmin": ("so thin a mark", "so thick a mark"),
    "height_arcmin": ("so short a mark", "so tall a mark"),
    "adaptation_cd_m2": ("so little light", "so much light"),
}
"""What the sums know less of, below and above the range in which they were checked."""
_PLAIN = {
    Note.LEAD_LEFT_OUT: "of your lead only No 8 and smaller is counted on, as larger lead is banned "
    "on many waters: for a bulk you need shot of another metal; ask again with it",
    Note.BOLD_ASKED: "with ordinary bites no tip rides here: this water asks for bold ones",
    Note.SUN_LANE: "nothing inside the sun lane can be depended on: wait till it has moved, or fish "
    "beside it",
    Note.LANE_GLASSES: "polarised glasses ease the eye in the lane and add no contrast at this range",
    Note.NO_STOCK: "you have no tip stock: you need what is advised for the bench",
    Note.NOTHING_FITS: "no tip that you have keeps the limits on this float; take a float with "
    "more shot, or look for calmer water",
    Note.TOP_HEAVY: "this tip makes the float top-heavy",
    Note.FALLS_OVER: "with all its shot on this float falls over: take a lighter or shorter tip, a "
    "heavier or longer stem, or a bigger body",
    Note.LIES_FLAT: "held so hard this float lies flat: run it freer, or take a bigger one",
    Note.SINKING_LINE: "a sinking line bows and drags the tip under: grease it, or let more show",
    Note.LIGHT_NOT_RECKONED: "the glow of the light stick is not in these sums: they tell how the "
    "painted tip is seen by what daylight is left",
    Note.HARDLY_DIPS: "this tip hardly ever dips by itself, so no length of dip is given",
    Note.NO_DIP_SEEN: "seen so poorly no dip can be told, so no slow bite is given",
    Note.LIGHT_AIR: "so light a wind makes cat's-paws, no even ripple: the ride is a rough guess",
    Note.WAVES_ACROSS: "waves that run across the line of sight: the doubt of the sight is larger",
    Note.BREAKING: "so steep a sea breaks: its waves are taken as a tenth as high as they are long",
    Note.HARDER_THAN_WEIR: "water that boils more than a weir is taken to look like a weir's",
    Note.CRESTS_BEYOND: "what the crests hide at worst is not known for so flat or so steep a look",
    Note.AFTER_SUNSET: "after sunset the sky is taken to be spread as at sunset: a judgement",
    Note.SHARP_EYES: "sight better than 6/6 counts as 6/6",
}
_Values = dict[str, float]
_COUNTED: dict[Note, Callable[[_Values, Reader], str]] = {
    Note.WEIGHT_ODD: lambda v, _: (
        f"you told that the float weighs {v['weighs_g']:.2g} g, where one "
        f"of its kind that takes so much weighs about {v['usual_g']:.1f} g: weigh it again, without "
        "its shot"
    ),
    Note.SHOT_ODD: lambda v, _: (
        f"the shot you told comes to {v['hangs_g']:.2f} g, where the float as you told it takes "
        f"{v['takes_g']:.2f} g: changes start from the shot; weigh or look again"
    ),
    Note.OUT_OF_REACH: lambda v, reader: (
        f"{grades.grade(v['wanted'])} is more than this swim gives "
        f"with what you have; {cures(_SIGHT_CURES, v.get('goes_at_m'), reader)}"
    ),
    Note.NONE_BETTER: lambda v, reader: (
        "none that you could fit is seen better; "
        + cures(_SIGHT_CURES, v.get("goes_at_m"), reader)
    ),
    Note.HELD_LIFTS: lambda v, _: (
        f"holding back lifts the float by {v['lift_g']:.2f} g: over-shot "
        "it by as much, and do not trust a fine setting"
    ),
    Note.SHOULDER_OUT: lambda v, _: (
        "with "
        + (f"only {v['wet_mm']:.0f} mm" if v["wet_mm"] >= 0.5 else "none")
        + " of the tip under water the body's shoulder lifts out in a ripple and the float rides less "
        "evenly"
    ),
    Note.SEEN_TO_THE_END: lambda v, _: (
        f"on some water it is still seen at {v['farthest_m']:.0f} m, where the sums end"
    ),
    Note.DISTANCE_BEYOND: lambda v, _: (
        f"the distance may lie outside {v['nearest_m']:.0f} to "
        f"{v['farthest_m']:.0f} m, where the sums end: the range of the level is wider than is said"
    ),
    Note.STRONG_WIND: lambda v, _: (
        f"no slopes of water were measured in a wind over {v['limit_m_s']:g} m/s"
    ),
    Note.HELD_HARD: lambda v, _: (
        f"held back by more than {v['limit_m_s']:g} m/s: how it leans and "
        f"lifts is that at {v['limit_m_s']:g} m/s"
    ),
    Note.HIGH_SUN: lambda v, _: (
        f"with the sun over {v['limit_deg']:g} deg a clear sky is not known so well"
    ),
    Note.YOUNG_EYES: lambda v, _: f"eyes under {v['limit_years']:g} count as {v['limit_years']:g}",
    Note.DIVISIONS_LEFT_OUT: lambda v, _: (
        f"{v['count']:.0f} ways to divide a tip were not tried: a "
        "band would be under 5 mm or too small to tell apart at that distance"
    ),
}
"""What is said of each kind of warning, from its numbers."""


def warning(told: Warn | Nearly, case: Case, reader: Reader = ANGLER, full: bool = False) -> str:
    """Return one warning as a sentence without its end, with all its numbers if ``full``."""
    if isinstance(told, Nearly):
        return nearly(told, reader)
    numbers = {key: value for key, value in told.values.items() if isinstance(value, float | int)}
    waters = told.values.get("waters", ())
    on = listed([_water(case, name) for name in waters] if isinstance(waters, tuple) else [])
    if told.kind is Note.COLOUR_CARRIES:
        return (
            f"on {on} water it is colour, not brightness, that shows this tip: the less certain "
            "half of the sums"
        )
    if told.kind is Note.OUTSIDE:
        return _outside(told, on, full)
    if told.kind is Note.AS_IT_IS:
        return _wished(Limit(str(told.values["limit"])), numbers["value"], numbers["allowed"])
    return _PLAIN.get(told.kind) or _COUNTED[told.kind](numbers, reader)


def _wished(limit: Limit, value: float, allowed: float) -> str:
    """Return what a float that exists does not keep, though it may stay so."""
    match limit:
        case Limit.BODY:
            return f"this tip is {value:g} mm thick, where such a body is well off with {allowed:.1f} mm"
        case Limit.ROOM:
            return f"{value:g} mm of this tip run on inside, where the body has {allowed:.0f} mm"
        case _:
            return (
                f"{value:g} mm of this tip are glued in, where {allowed:.1f} mm would hold it well"
            )


def _outside(told: Warn, on: str, full: bool) -> str:
    value, low, high = (float(told.values[key]) for key in ("value", "low", "high"))  # type: ignore[arg-type]
    below, above = _LESS_SURE[str(told.values["name"])]
    said = f"less sure of {below if value < low else above}" + (f" ({on} water)" if on else "")
    if not full:
        return said
    unit = f" {told.values['unit']}".rstrip()
    return f"{said}: {figures(value)}{unit}, where it was checked from {low:g} to {high:g}{unit}"


def _water(case: Case, name: str) -> str:
    return names.whole_water(names.stretch(case, name))


def warnings(answer: Answer, reader: Reader = ANGLER, full: bool = False) -> tuple[str, ...]:
    """Return all that the answer has to warn of, nothing said twice."""
    said = [warning(one, answer.case, reader, full) for one in answer.warnings]
    return tuple(dict.fromkeys(said))


IN_THE_WAY = (Note.OUT_OF_REACH, Note.NONE_BETTER, Note.NOTHING_FITS)


def in_the_way(told: Warn | Nearly) -> bool:
    """Return whether a warning says why nothing better is advised."""
    return isinstance(told, Nearly) or told.kind in IN_THE_WAY
