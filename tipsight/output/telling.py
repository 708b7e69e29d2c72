"""Facts of an answer in words: limits, cures, warnings, doubts, cautions and reasons."""

from collections.abc import Iterable

from tipsight.advice.answer import (
    PaintShows,
    Reason,
    Size,
    Turns,
    Unsure,
    WaterHides,
)
from tipsight.advice.facts import Care, Caution, Cure, Doubt, Failure, Limit
from tipsight.advice.reasons import HIDES_MM, NOTICED
from tipsight.inputs.case import Case
from tipsight.output import names
from tipsight.output.measures import (
    ANGLER,
    Reader,
    figures,
    grams,
    listed,
    sentence,
    share,
    tenths,
)
from tipsight.sight import grades
from tipsight.sight.energy import MM_PER_ARCMIN_M

CARD_M = 3.0  # the room across which a tip is told as a mark
LOCAL = "check your local rules"

SHORT = {
    Limit.RIDE: "does not ride this water",
    Limit.BITE: "stiffer than the bites allow",
    Limit.STRENGTH: "longer than such a tip can stand",
    Limit.BALANCE: "top-heavy",
    Limit.BODY: "too thick for the body",
    Limit.ROOM: "no room in the body to glue it",
    Limit.GLUE: "held by little glue",
    Limit.LOAD: "no shot left to cock it",
}
"""Each limit but sight by what breaking it means."""


def shortcoming(limit: Limit, wanted: str) -> str:
    """Return what breaking one limit means, in few words; ``wanted`` is the grade asked for."""
    return SHORT.get(limit, f"short of {wanted}")


CURED = {
    Limit.RIDE: "it rides this water",
    Limit.ROOM: "there is room to glue it",
    Limit.GLUE: "it has glue enough",
    Limit.LOAD: "there is shot left to cock it",
}
"""What mending a limit means, where it is more than to be rid of what breaking it meant."""


def cure(limit: Limit, wanted: str) -> str:
    """Return what mending one limit means, in few words.

    Examples
    --------
    >>> cure(Limit.RIDE, "kept in view"), cure(Limit.BALANCE, "kept in view")
    ('it rides this water', 'no longer top-heavy')
    """
    return CURED.get(limit, f"no longer {shortcoming(limit, wanted)}")


def failure(told: Failure) -> str:
    """Return a limit that is not kept, what the tip has and what is allowed.

    Examples
    --------
    >>> failure(Failure(Limit.RIDE, 1.25, 2.0))
    'ride: margin 1.2 where 2 is the least'
    """
    value, allowed = told.value, told.allowed
    match told.limit:
        case Limit.SIGHT:
            seen, asked = grades.grade(value), grades.grade(allowed)
            said = f"{seen} (level {tenths(value):.1f}) where {asked} ({allowed:g}) is wanted"
        case Limit.RIDE:
            said = f"margin {tenths(value):.1f} where {allowed:g} is the least"
        case Limit.BITE:
            said = f"{value:.2f} g to sink it where {allowed:.2f} g is the most"
        case Limit.STRENGTH:
            said = f"{value:.0f} mm showing where {allowed:.0f} mm is the most"
        case Limit.BALANCE:
            said = "top-heavy, it leans or falls over"
        case Limit.BODY:
            said = f"{value:g} mm thick where {allowed:.1f} mm is the most"
        case Limit.ROOM:
            said = f"{value:.0f} mm to glue in where the body has {allowed:.0f} mm"
        case Limit.GLUE:
            said = f"{value:g} mm glued in where {allowed:.1f} mm is the least"
        case Limit.LOAD:
            said = f"{grams(value)} left for shot where {allowed:g} g is the least"
    return f"{told.limit}: {said}{', as it is' * told.as_it_is}"


_CURES = {
    Cure.STAND_HIGHER: "stand higher",
    Cure.OTHER_STRETCH: "pick a darker or calmer stretch",
    Cure.EASE_OFF: "ease off",
    Cure.SHALLOWER: "fish shallower",
    Cure.MORE_TOP: "let more of a dry top show",
    Cure.NEXT_SIZE: "take the next size of float for the same shot",
    Cure.CALMER_WATER: "look for calmer water",
    Cure.BOLDER_BITES: "allow for bolder bites",
    Cure.MORE_SHOT: "take a float with more shot",
    Cure.BIGGER_FLOAT: "take a bigger float",
    Cure.LIGHTER_TIP: "take a lighter tip",
    Cure.THICKER_TIP: "take a thicker tip",
    Cure.THICKER_BODY: "take a thicker body",
    Cure.LONGER_BODY: "take a longer body",
    Cure.MORE_GLUED: "glue more of it in",
}


def cures(told: Iterable[Cure], goes_at_m: float | None, reader: Reader = ANGLER) -> str:
    """Return what would help; ``goes_at_m`` is where the tip would still do.

    Examples
    --------
    >>> cures((Cure.COME_CLOSER, Cure.STAND_HIGHER), 29 * 0.9144)
    'fish it no farther than 29 yd or stand higher'
    """
    near = f"fish it no farther than {reader.far(goes_at_m)}" if goes_at_m else "come closer"
    return listed([near if one is Cure.COME_CLOSER else _CURES[one] for one in told], "or")


_DOUBTS = {
    Doubt.DISTANCE: "how far it really is: pace it out, or count the line off the reel",
    Doubt.EYES: "your own eyes against others of your age: try a painted stick at known paces",
    Doubt.STREAKS: "how much the streaks of the ripple hide a thin tip: nobody has measured it",
    Doubt.SEA: "how the ripple is made up, of long waves or of short ones",
    Doubt.WATER: "how bright the water behind the tip is: look from where your eye will be",
    Doubt.RIPPLE: "how much of the foot the nearer ripples hide",
    Doubt.BEHIND: "what the water behind the tip mirrors: look along the trot before you fish",
}


def doubt(told: Unsure) -> str:
    """Return what is not known, and what would settle it."""
    return _DOUBTS[told.kind]


_CARE = {
    Care.LEAD: f"Lead: most sizes are banned on many waters, {LOCAL}; wash hands, never bite it shut, "
    "keep it from children.",
    Care.SUN: "Never stare into the sun or its lane, dark glasses or not; look away often.",
    Care.WADING: "Do not wade or climb only to see better; the river decides.",
    Care.LIGHT_STICK: f"Light stick: {LOCAL}; never cut one open.",
    Care.DUSK: "Do not wade alone in the dusk.",
    Care.QUILL: f"Quills: only from domestic birds or a known lawful source, {LOCAL} on wild "
    "feathers.",
    Care.DUST: "Dust: wear a mask, or sand wet.",
    Care.PAINT: "Paint and glue: open the window, no flame, read the label.",
    Care.FOAM: "Spirit, cellulose and spray paints melt foam: water-based paint only.",
}
_TRIGGERS = {
    Care.LEAD: "lead in the shot list",
    Care.SUN: "sun near the line of sight",
    Care.WADING: "coming closer",
    Care.LIGHT_STICK: "a light stick is offered",
    Care.DUSK: "the sun is down",
    Care.QUILL: "a quill tip",
    Care.PAINT: "a tip to paint",
    Care.FOAM: "a foam body",
}


def caution(told: Caution) -> str:
    """Return a caution as one sentence or two."""
    return _CARE[told.kind]


def trigger(told: Caution) -> str:
    """Return what brings a caution up.

    Examples
    --------
    >>> trigger(Caution(Care.DUST, "balsa"))
    'a balsa tip to cut'
    """
    return _TRIGGERS.get(told.kind) or f"a {told.stock} tip to cut"


def reason(told: Reason, case: Case, reader: Reader = ANGLER) -> str:
    """Return one reason as a sentence."""
    match told:
        case Size():
            tall, wide = (_at_card_mm(x) for x in (told.tall_arcmin, told.wide_arcmin))
            return (
                f"At {reader.far(told.range_m)} {told.showing_mm:g} mm of {told.diameter_mm:g} mm is "
                f"like a mark {figures(tall)} by {figures(wide)} mm across a room of {CARD_M:g} m."
            )
        case PaintShows():
            on = _on(case, told.water)
            return f"{on} {told.paint} is {beside(told.contrast)} what lies behind it."
        case WaterHides():
            words = []
            if told.hidden_mm >= HIDES_MM:
                words.append(f"the nearer ripples hide about {told.hidden_mm:.0f} mm of its foot")
            if told.streaks_share >= NOTICED:
                words.append(
                    f"its streaks leave {share(1 - told.streaks_share)} of what flat water would show"
                )
            return sentence("; ".join(words))
        case Turns():
            return _turns(told)


def _turns(told: Turns) -> str:
    when = (
        f"On {told.water} water"
        if told.water
        else f"You told {told.colour_vision} eyes: with normal ones"
    )
    if told.level is not None:
        theirs = told.block.visibility.level
        return f"{when} the tip in hand would be at level {theirs:.1f}, not {told.level:.1f}."
    return f"{when} the choice would turn to {names.fitting(told.block.tip)}."


def _on(case: Case, name: str) -> str:
    """Return where a tip is seen, by the water behind it."""
    stretch = names.stretch(case, name)
    if stretch.sun_ahead:
        return f"In the {name}"
    if stretch.mirrors:
        high = f"{stretch.bank_height_deg:.0f} deg high"
        return f"Where the water mirrors {stretch.mirrors}, {high},"
    return f"On the {name} water"


def _at_card_mm(angle_arcmin: float) -> float:
    """Return how long a mark takes up an angle across a room [mm]."""
    return angle_arcmin * MM_PER_ARCMIN_M * CARD_M


def beside(contrast: float) -> str:
    """Return how bright a paint is beside the water, from its contrast in luminance [-].

    Examples
    --------
    >>> beside(-0.93), beside(0.4), beside(0.98), beside(5.3)
    ('93% darker than', '40% brighter than', 'twice as bright as', '6.3 times as bright as')
    >>> beside(-0.997), beside(0.002)
    ('all but black against', 'just as bright as')
    """
    if contrast < -0.985:
        return "all but black against"
    if abs(contrast) < 0.005:
        return "just as bright as"
    if contrast < 0.95:
        return f"{abs(contrast):.0%} {'darker' if contrast < 0 else 'brighter'} than"
    if abs(contrast - 1) < 0.05:
        return "twice as bright as"
    return f"{1 + contrast:.2g} times as bright as"
