"""From the question as a person puts it to the question in numbers."""

from tipsight.errors import Mistakes
from tipsight.inputs.behind import settle_behind
from tipsight.inputs.case import Angler, Assumed, Case, Wanted
from tipsight.inputs.items import ITEMS
from tipsight.inputs.question import Question
from tipsight.inputs.settle_float import settle_box, settle_float
from tipsight.inputs.settle_light import settle_light
from tipsight.inputs.settle_swim import is_rough, settle_place, settle_stream, settle_wind
from tipsight.inputs.teller import Teller

OLDEST_YEARS = 75.0
"""Beyond which the curve of age is not known (Adrian 1989)."""


def settle(question: Question) -> Case:
    """Return the question in numbers, with what was taken for every item that was not told.

    Parameters
    ----------
    question : Question
        What the angler said.

    Returns
    -------
    Case
        Ready for the sums.

    Raises
    ------
    Mistakes
        With everything that is wrong, all at once.

    Examples
    --------
    >>> case = settle(Question(distance="40 yd", depth="7 ft"))
    >>> round(case.place.range_m, 3), case.assumed[0].item
    (36.576, 'known')
    """
    teller = Teller(question)
    place = settle_place(teller)
    wind = settle_wind(teller)
    stream = settle_stream(teller)
    light = settle_light(teller)
    stretches = settle_behind(teller, light)
    angler = _angler(teller)
    bites = teller.take("bites", "bold" if is_rough(wind, stream) else None)
    wanted = Wanted(teller.take("seen").number, bites.number)
    box = settle_box(teller)
    float_, weighed_tip, tip = settle_float(teller, box)
    teller.ask_the_rest()
    if teller.mistakes:
        # An item may be asked for by two rooms of the question; one mistake is told once.
        raise Mistakes(sorted(dict.fromkeys(teller.mistakes), key=lambda m: _place_of(m.item)))
    assumed = sorted(dict.fromkeys(teller.assumed), key=lambda a: _place_of(a.item))
    return Case(
        place=place,
        light=light,
        stretches=stretches,
        wind=wind,
        stream=stream,
        angler=angler,
        wanted=wanted,
        float_=float_,
        weighed_tip=weighed_tip,
        tip=tip,
        box=box,
        assumed=tuple(assumed),
    )


def _place_of(item: str) -> int:
    return list(ITEMS).index(item)


def _angler(teller: Teller) -> Angler:
    age = teller.take("age")
    if age > OLDEST_YEARS:
        teller.assumed.append(Assumed("age", f"{OLDEST_YEARS:g}, beyond which the sums do not go"))
    return Angler(
        age_years=min(age, OLDEST_YEARS),
        mar_arcmin=teller.take("sight"),
        colour_vision=teller.take("colour_vision").word,
        own_eye_factor=teller.take("own_eye"),
        tint=teller.take("tint").word,
    )
