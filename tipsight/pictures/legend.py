"""What is said beside the view from the bank: of each panel, of the light, and how to look at it."""

from dataclasses import dataclass
from typing import Any

from tipsight.advice.answer import Answer, Block
from tipsight.advice.facts import Care
from tipsight.inputs.case import Case, Stretch, Tip
from tipsight.inputs.question import Question
from tipsight.inputs.values import Asker
from tipsight.output import measures, names, telling
from tipsight.output.measures import ANGLER, Reader, listed
from tipsight.pictures import far_bank, truesize
from tipsight.pictures.panels import LOOK_FROM_M, PIXELS_PER_MM, Eyes, frames, veil_share, view_of
from tipsight.pictures.subject import advised, deciding, waters

GREY_FROM = 0.15
"""Share of a veil in the light from which black looks grey (judgement)."""
BEYOND = (
    f"The strip on top is squeezed: sky and far bank to {far_bank.ABOVE_PX * far_bank.ROW_DEG:.0f} "
    "degrees up, and under them the water that mirrors them, from there to the panel, its ripple "
    "evened out."
)
"""What the strip of the far bank is."""


@dataclass(frozen=True)
class Panel:
    """One tip before one water."""

    title: str
    tip: Tip
    seen: str
    """How well it is seen, in words."""


def panels_of(answer: Answer, water: str) -> tuple[Panel, ...]:
    """Return what is said of each tip on one water: one panel where both are alike."""

    def panel(title: str, block: Block) -> Panel:
        sight = next(s for s in block.visibility.by_background if s.name == water)
        seen = f"{sight.grade} (level {measures.levels(sight.low, sight.high)})"
        return Panel(title, block.tip, seen)

    place, block = advised(answer)
    if block.tip == answer.tip_in_hand.tip:
        return (panel("Now, and as advised", block),)
    return panel("Now", answer.tip_in_hand), panel(f"Advised, at the {place}", block)


def _tips(answer: Answer) -> tuple[Tip, Tip]:
    return answer.tip_in_hand.tip, advised(answer)[1].tip


def veiled(answer: Answer, eyes: Eyes = "told") -> tuple[str, ...]:
    """Return a sentence for each water on which glare turns a black tip grey."""
    black = [tip for tip in _tips(answer) if any(band.paint == "black" for band in tip.bands)]
    return tuple(
        f"{_where(water)} black looks grey: the glare lays a veil over it."
        for water in waters(answer)
        if any(
            veil_share(view_of(answer, deciding(answer, water, tip), eyes)) >= GREY_FROM
            for tip in black
        )
    )


def _where(water: Stretch) -> str:
    return f"In the {water.name}" if water.sun_ahead else f"On {water.name} water"


def said_of(panel: Panel) -> tuple[str, str]:
    """Return a panel's two lines of words."""
    tip = panel.tip
    return (
        f"{panel.title}: {names.stock(tip)}, {tip.showing_mm:.3g} mm showing: {panel.seen}",
        names.paint(tip.bands, tip.showing_mm),
    )


def captions(answer: Answer) -> dict[str, tuple[tuple[str, str, str], ...]]:
    """Return by water the title and the two lines of words of each tip, in the order of `drawn`."""
    return {
        water.name: tuple(
            (panel.title, *said_of(panel)) for panel in panels_of(answer, water.name)
        )
        for water in waters(answer)
    }


def film_words(answer: Answer) -> tuple[str, str]:
    """Return what stands under each tip of the film, on the water where the one in hand is worst."""
    worst = answer.tip_in_hand.visibility.worst
    now, better = (
        next(s for s in block.visibility.by_background if s.name == worst.name).grade
        for block in (answer.tip_in_hand, advised(answer)[1])
    )
    return f"Now: {now}", f"Advised: {better}"


def biting(words: str) -> str:
    """Return a tip's words while the bite holds it down."""
    return f"{words} - a bite"


def film_scale(main: float, near: float) -> tuple[str, str]:
    """Return what stands in the film: how many times too large the main and the upper pictures are."""
    wide, close = map(truesize.about, (main, near))
    far = f"{100 * truesize.READ_FROM_M:.0f} cm"
    return f"about {wide} times too large, read from {far}", f"about {close} times"


def film_described(answer: Answer, reader: Reader = ANGLER) -> str:
    """Return in words what the film shows."""
    now, better = film_words(answer)
    worst = answer.tip_in_hand.visibility.worst
    return (
        f"Computed film of both tips at {reader.distance(answer.case.place.range_m)} on {worst.name} "
        f"water. {now}; {better[0].lower()}{better[1:]}. One bite takes both down; above, each magnified. "
        f"{' '.join(sun_care(answer))}"
    ).rstrip()


def too_large(
    answer: Answer,
    pixels_per_mm: float = PIXELS_PER_MM,
    read_from_m: float = truesize.READ_FROM_M,
) -> tuple[float, float]:
    """Return how many times too large the wide and the magnified panels are, for one who reads them.

    Examples
    --------
    >>> from tipsight import Question, advise
    >>> wide, near = too_large(advise(Question(behind=["dark"], showing="45 mm")))
    >>> wide, 50.0 < near < 100.0
    (12.5, True)
    """
    longest = max(b.tip.showing_mm for b in (answer.tip_in_hand, advised(answer)[1]))
    panel, inset = frames(answer.case.place.range_m, longest)
    times = truesize.times_too_large(pixels_per_mm, read_from_m)
    return times, times * panel.pixel_mm / inset.pixel_mm


def heading(answer: Answer, reader: Reader = ANGLER) -> str:
    """Return what is looked at, from how high, under which sky."""
    told: dict[str, Any] = dict(answer.question)
    place, sky = answer.case.place, Asker(Question(**told)).ask("sky")
    said = f"{reader.distance(place.range_m)}, eye {place.eye_height_m:.2g} m above the water"
    return f"{said}, {sky.word} sky" if sky else said


def sun_care(answer: Answer) -> tuple[str, ...]:
    """Return the answer's own caution where the sun or its lane is looked at, else nothing."""
    return tuple(telling.caution(one) for one in answer.cautions if one.kind is Care.SUN)


def foot(answer: Answer, eyes: Eyes = "told") -> str:
    """Return all that is said under an answer's panels."""
    return " ".join((*of_this_water(answer, eyes), *how_to_look(answer, eyes)))


def of_this_water(answer: Answer, eyes: Eyes = "told") -> tuple[str, ...]:
    """Return what is to be known of these panels: glare, and which light and patch is drawn."""
    return *veiled(answer, eyes), *in_which_light(answer)


def how_to_look(answer: Answer, eyes: Eyes = "told") -> tuple[str, ...]:
    """Return what is said of every view: whose eyes, from how far, and what a screen cannot show."""
    wide, near = too_large(answer)
    return caveat(answer.case, near / wide, eyes), BEYOND


def in_which_light(answer: Answer) -> tuple[str, ...]:
    """Return in which light and on which patch a water is drawn, where it may be more than one."""
    turned: list[str] = []
    patchy: list[str] = []
    for water in waters(answer):
        views = [deciding(answer, water, tip) for tip in _tips(answer)]
        if any(light != answer.case.light for light, _ in views):
            turned.append(water.name)
        if any(stretch.bank_height_deg != water.bank_height_deg for _, stretch in views):
            patchy.append(water.name)
    said = []
    if turned:
        said.append(
            f"The light may turn: {listed(turned)} water is drawn as the answer counts it, for each "
            "tip in the light that is worst for it."
        )
    if patchy:
        said.append(
            f"{listed(patchy).capitalize()} water is dark and bright by turns: each tip is drawn "
            "before the patch that is worst for it."
        )
    return tuple(said)


def describe(answer: Answer, reader: Reader = ANGLER) -> str:
    """Return in words what the picture shows, for those who do not see it.

    Examples
    --------
    >>> from tipsight import Question, advise
    >>> describe(advise(Question(behind=["dark"])))[:47]
    'Computed view of the tip at 40 yd (37 m), as se'
    """
    place = answer.case.place
    rows = [
        f"Water behind the tip {water.name}: "
        + "; ".join(", ".join(said_of(panel)) for panel in panels_of(answer, water.name))
        for water in waters(answer)
    ]
    return (
        f"Computed view of the tip at {reader.distance(place.range_m)}, as seen from "
        f"{place.eye_height_m:.2g} m above the water. {'. '.join(rows)}. {' '.join(sun_care(answer))}"
    ).rstrip()


def sized(read_from_m: float = truesize.READ_FROM_M) -> str:
    """Return what stands over a picture of true size."""
    return f"True size, read from {100 * read_from_m:.0f} cm"


def drawn_at(large: tuple[float, float], read_from_m: float) -> str:
    """Return what stands under a panel: how many times too large it is, and its inset."""
    wide, near = map(truesize.about, large)
    return (
        f"Read from {100 * read_from_m:.0f} cm, drawn about {wide} times too large; "
        f"magnified, about {near} times"
    )


def caveat(case: Case, times: float, eyes: str = "good") -> str:
    """Return what stands under the picture: whose eyes, how to look, and what a screen cannot show.

    Examples
    --------
    >>> from tipsight import Question, advise
    >>> "magnified 5.1 times" in caveat(advise(Question(behind=["dark"])).case, 5.12)
    True
    """
    told = case.angler
    whose = (
        "young eyes that see all colours"
        if eyes == "good"
        else f"the eyes told ({told.age_years:.0f} years, colour vision "
        f"{told.colour_vision}), and so much paler as they lose of contrast"
    )
    bright = (
        "it is far brighter than the dusk: by the water far less is seen than here"
        if case.light.sun_height_deg < 0
        else "it is far less bright than the day"
    )
    large = f"magnified {times:.2g} times" if times >= 1.05 else "no larger"
    return (
        f"Computed, not a photograph; for {whose}. Zoom until the bar is 100 mm long: from "
        f"{LOOK_FROM_M:g} m away the wide panels then have their true angular size; the narrow ones "
        f"are {large}. This is one of many ripples that such water makes; it moves, and crests "
        "cover the foot by turns. "
        f"A screen does not glow as fluorescent paint does, and {bright}."
    )
