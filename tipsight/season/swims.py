"""A season: its swims, and how often each is fished."""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import product
from typing import Any

from tipsight.errors import Mistake, Mistakes, nearest
from tipsight.inputs import demo
from tipsight.inputs.begun_table import one_line
from tipsight.inputs.items import ITEMS
from tipsight.inputs.question import Question, is_told
from tipsight.inputs.settle import settle
from tipsight.inputs.toml_text import of_tree, parsed

OF_FLOAT = ("float", "tip")
"""Sections that tell of a float; all others tell of the swim and of who fishes it."""
IN_HAND = "goes_under"
"""An item of the swim that was seen of one tip, and is untrue of any other."""
ALL, SWIM, LADDER = "all", "swim", "ladder"
OFTEN = 1.0
"""A swim of which it is not told how often it is fished."""
MOST_OFTEN = 1e6
MOST_SWIMS = 100_000
_EXAMPLE = '[[swim]] with name = "the long glide", often = 6, place.distance = "30 yd"'

LADDER_STEPS: Mapping[str, tuple[str, ...]] = {
    "distance": ("15 yd", "25 yd", "35 yd", "45 yd"),
    "looks": ("glass", "ripple", "wavelets"),
    "behind": ("dark", "bright"),
    "sky": ("bright overcast", "dull overcast"),
}
"""Yards, water, water behind the tip, and sky of the ladder that stands in for a season."""


@dataclass(frozen=True)
class Fished:
    """One swim of a season."""

    name: str
    often: float
    """How often it is fished, in any unit that is the same for all."""
    question: Question
    """All that is told of it; of a float only what a sweep is to answer for."""

    def with_float(self, float_: Question) -> Question:
        """Return the question of this swim with a float, whatever float it had."""
        ours = {key: None for key, item in ITEMS.items() if item.section in OF_FLOAT}
        return self.question.with_options(**{**ours, **told_of_float(float_)})


def told_of_float(question: Question) -> dict[str, Any]:
    """Return what a question tells of float and tip.

    Examples
    --------
    >>> told_of_float(Question(distance="40 yd", takes="6BB"))
    {'takes': '6BB'}
    """
    told = question.told()
    return {key: value for key, value in told.items() if ITEMS[key].section in OF_FLOAT}


def read(text: str) -> tuple[Fished, ...]:
    r"""Return the swims of a TOML text.

    Each ``[[swim]]`` has a name, how often it is fished, and the sections of a question;
    ``[all.SECTION]`` tells what they share; ``[ladder]`` has lists for items, of which every
    combination is a swim.

    Parameters
    ----------
    text : str
        The file.

    Returns
    -------
    tuple of Fished
        In the order of the file, those of the ladder last.

    Raises
    ------
    Mistakes
        With all that is wrong, each with the name of its swim.

    Examples
    --------
    >>> [(one.name, one.often) for one in read('[[swim]]\nname = "glide"\noften = 3\n')]
    [('glide', 3.0)]
    """
    tree = parsed(text)
    mistakes = [
        Mistake(key, "", f"a season has no such part{nearest(key, _PARTS)}", _EXAMPLE)
        for key in tree
        if key not in _PARTS
    ]
    shared, swims, steps = tree.get(ALL, {}), tree.get(SWIM, []), tree.get(LADDER, {})
    if not isinstance(swims, list) or not all(isinstance(one, dict) for one in swims):
        raise Mistakes([Mistake(SWIM, "", "each swim stands under a line of its own", _EXAMPLE)])
    found = []
    for n, one in enumerate(swims, 1):
        name = one.get("name", f"swim {n}")
        if not isinstance(name, str) or not name.strip():
            mistakes.append(Mistake(f"swim {n}", f"{name}", "a name is a text", 'name = "glide"'))
            name = f"swim {n}"
        name = one_line(name)
        often = one.get("often", OFTEN)
        if isinstance(often, bool) or not isinstance(often, int | float):
            often = -1.0
        if not 0.0 <= often <= MOST_OFTEN:
            why = "say how often it is fished as a number, 0 to a million"
            mistakes.append(Mistake(f"{name}: often", f"{one['often']}", why, "often = 6"))
        body = {key: value for key, value in one.items() if key not in ("name", "often")}
        if question := _question(name, _over(shared, body), mistakes):
            found.append(Fished(name, float(often), question))
    if steps and not mistakes:
        found += _climbed(_question(ALL, shared, mistakes) or Question(), _steps(steps))
    named = Counter(one.name for one in found)
    mistakes += [
        Mistake(SWIM, name, "two swims have this name; call one otherwise", "")
        for name, count in named.items()
        if count > 1
    ]
    if not found and not mistakes:
        mistakes.append(Mistake("season", "", "there is no swim in it", _EXAMPLE))
    if mistakes:
        raise Mistakes(mistakes)
    return checked(found)


def _question(name: str, tree: Mapping[str, Any], mistakes: list[Mistake]) -> Question | None:
    try:
        return of_tree(tree)
    except Mistakes as wrong:
        mistakes += [_of(name, one) for one in wrong.mistakes]
        return None


def _of(name: str, one: Mistake) -> Mistake:
    return Mistake(f"{name}: {one.item}", one.said, one.allowed, one.example)


def _over(shared: Any, own: Mapping[str, Any]) -> dict[str, Any]:
    """Return sections with what a swim tells itself on top of what all share."""
    if not isinstance(shared, dict):
        raise Mistakes([Mistake(ALL, "", "what all share stands in sections", "[all.water]")])
    found: dict[str, Any] = {}
    for section in dict.fromkeys((*shared, *own)):
        above, under = own.get(section, {}), shared.get(section, {})
        both = isinstance(above, dict) and isinstance(under, dict)
        found[section] = {**under, **above} if both else (above or under)
    return found


def _steps(told: Any) -> dict[str, tuple[str, ...]]:
    """Return the lists of a ladder, all of them items of the swim."""
    if not isinstance(told, dict):
        raise Mistakes([Mistake(LADDER, "", "a ladder is a section", "[ladder]")])
    mistakes, found = [], {}
    for key, values in told.items():
        if key not in ITEMS or ITEMS[key].section in OF_FLOAT:
            why = f"a ladder climbs by items of the swim{nearest(key, ITEMS)}"
            mistakes.append(Mistake(f"ladder: {key}", "", why, 'distance = ["20 yd", "30 yd"]'))
        elif not isinstance(values, list) or not values:
            why = "the steps of a ladder stand in a list"
            mistakes.append(Mistake(f"ladder: {key}", f"{values}", why, '["20 yd", "30 yd"]'))
        else:
            found[key] = tuple(f"{value}" for value in values)
    count = 1
    for values in found.values():
        count *= len(values)
    if count > MOST_SWIMS:
        why = f"that makes {count} swims, and {MOST_SWIMS} are the most"
        mistakes.append(Mistake(LADDER, "", why, "fewer steps"))
    if mistakes:
        raise Mistakes(mistakes)
    return found


def _climbed(shared: Question, steps: Mapping[str, Sequence[str]]) -> list[Fished]:
    # distance innermost, so that neighbours have light and water in common
    keys = sorted(steps, key=lambda key: key == "distance")
    found = []
    for said in product(*(steps[key] for key in keys)):
        told = {
            key: (value,) if ITEMS[key].repeats else value
            for key, value in zip(keys, said, strict=True)
        }
        name = ", ".join(said)
        found.append(Fished(name, OFTEN, shared.with_options(**told)))
    return found


def checked(swims: Sequence[Fished]) -> tuple[Fished, ...]:
    """Return swims that can all be asked about, or raise all that is to be mended in them.

    Raises
    ------
    Mistakes
        Each with the name of its swim.
    """
    mistakes = []
    for one in swims:
        if is_told(getattr(one.question, IN_HAND)):
            why = "this was seen of one tip; a season has many, so say how the water boils"
            mistakes.append(Mistake(f"{one.name}: {IN_HAND}", "", why, 'boils = "boily"'))
        try:
            settle(one.question)
        except Mistakes as wrong:
            mistakes += [_of(one.name, each) for each in wrong.mistakes]
    if mistakes:
        raise Mistakes(mistakes)
    return tuple(swims)


def ladder(shared: Question | None = None) -> tuple[Fished, ...]:
    """Return the ladder that comes with the program: yards x water x behind x sky.

    Parameters
    ----------
    shared : Question, optional
        What all its swims have in common: eyes, height, pace.

    Returns
    -------
    tuple of Fished
        Forty-eight swims, each fished as often as another.

    Examples
    --------
    >>> len(ladder()), ladder()[0].name
    (48, 'glass, dark, bright overcast, 15 yd')
    """
    return checked(_climbed(shared or Question(), LADDER_STEPS))


def invented() -> tuple[Fished, ...]:
    """Return the invented season of twenty-four swims.

    Returns
    -------
    tuple of Fished
        No such waters.

    Examples
    --------
    >>> len(invented())
    24
    """
    return read(demo.season())


_PARTS = (ALL, SWIM, LADDER)
