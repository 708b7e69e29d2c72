"""From the question as a person puts it to the question in numbers."""

from tipsight.errors import Mistakes
from tipsight.inputs.case import Angler, Assumed, Case, Wanted
from tipsight.inputs.items import ITEMS
from tipsight.inputs.question import Question
from tipsight.inputs.settle_behind import settle_behind
from tipsight.inputs.settle_float import settle_box, settle_float
from tipsight.inputs.settle_swim import (
    other_lights,
    settle_light,
    settle_place,
    settle_stream,
    settle_wind,
)
from tipsight.inputs.settle_trot import at_far_end, settle_trot
from tipsight.inputs.spoken import ANGLERS, Spoken
from tipsight.inputs.values import Asker
from tipsight.nature import OLDEST_YEARS

OWN_EYE_DOUBT, OWN_EYE_DOUBT_OLD, OLD_YEARS = 1.4, 1.5, 65.0
"""Eyes of one age differ by so much either way (x/÷): 1.31 of the eyes themselves (16 observers of
ModelFest) and 1.22 of how readily they say "gone" (judgement); more over 65, where the age factor
is in doubt too (judgement)."""


def settle(question: Question, spoken: Spoken = ANGLERS) -> Case:
    """Return the question in numbers, with what was taken for every item that was not told.

    Parameters
    ----------
    question : Question
        What the angler said.
    spoken : Spoken
        The units in which he is told what may be said instead.

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
    question = at_far_end(question)
    asker = Asker(question, spoken)
    place = settle_place(asker)
    trot = settle_trot(asker, place.range_m)
    wind = settle_wind(asker)
    stream = settle_stream(asker)
    light = settle_light(asker)
    stretches = settle_behind(asker, light)
    angler = _angler(asker)
    wanted = Wanted(asker.take("seen").number, asker.take("bites").number, asker.knows("bites"))
    box = settle_box(asker)
    float_, weighed_tip, tip = settle_float(asker, box)
    asker.ask_the_rest()
    if asker.mistakes:
        # An item may be asked for by two rooms of the question; one mistake is told once.
        raise Mistakes(sorted(dict.fromkeys(asker.mistakes), key=lambda m: _place_of(m.item)))
    assumed = sorted(dict.fromkeys(asker.assumed), key=lambda a: _place_of(a.item))
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
        other_lights=other_lights(asker, light),
        trot=trot,
        learnt=question.learnt,
    )


def _place_of(item: str) -> int:
    return list(ITEMS).index(item)


def _angler(asker: Asker) -> Angler:
    age = asker.take("age")
    if age > OLDEST_YEARS:
        asker.assumed.append(Assumed("age", f"{OLDEST_YEARS:g}, beyond which the sums do not go"))
    doubt = OWN_EYE_DOUBT_OLD if age > OLD_YEARS else OWN_EYE_DOUBT
    if not asker.knows("own_eye"):
        doubt = asker.learnt.own_eye_doubt or doubt
    return Angler(
        age_years=min(age, OLDEST_YEARS),
        mar_arcmin=asker.take("sight"),
        colour_vision=asker.take("colour_vision").word,
        own_eye_factor=asker.take("own_eye"),
        own_eye_doubt=doubt,
        tint=asker.take("tint").word,
    )
