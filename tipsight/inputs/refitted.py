"""What follows from a change to a float: shot that it took with another tip, seasons of another paint."""

from collections.abc import Mapping
from typing import Any

from tipsight.inputs.entry import Entry, plain_told, with_told
from tipsight.inputs.quantities import written
from tipsight.inputs.question import Question, Value, is_told
from tipsight.inputs.settle_float import settle_box, settle_float
from tipsight.inputs.settle_tip import stock_words
from tipsight.inputs.values import Asker

STICK = ("diameter", "stock", "bore")
SINCE = {"wet": "weighed_wet", "glued": "weighed_glued", "tip_coats": "weighed_coats"}
"""Of the tip now, and the same of the tip with which the float took its shot."""
OF_THAT_WEIGHING = ("takes_showing", "weighed_tip", *SINCE.values())


def refitted(
    before: Mapping[str, str], told: Mapping[str, Value | None]
) -> dict[str, Value | None]:
    """Return what else is told otherwise where ``told`` is new of a float, of which ``before`` was told.

    A new stick, or another length of the same one, leaves what the float takes where it was: with the
    tip that it had. Shot told anew was found with the tip of now. A new paint has no seasons yet, and
    another stick not the bore of the old one.

    Parameters
    ----------
    before : mapping of str to str
        All that was told of it, as ``checked`` left it.
    told : mapping of str to value
        What is told now.

    Returns
    -------
    dict
        Items that nobody told now, with what they become; None takes one back.

    Examples
    --------
    >>> avon = {"pattern": "quill avon", "takes": "6BB", "diameter": "3 mm", "stock": "quill",
    ...     "showing": "20 mm", "paint": "red", "seasons": "3"}
    >>> refitted(avon, {"diameter": "4 mm", "showing": "30 mm"})
    {'weighed_tip': '3 mm quill', 'takes_showing': '20 mm', 'weighed_wet': '10 mm'}
    >>> refitted(avon, {"paint": "black"}), refitted(avon, {"takes": "5BB", "showing": "30 mm"})
    ({'seasons': None}, {})
    """
    after = plain_told({**before, **told})
    new = {key for key in (*before, *after) if before.get(key) != after.get(key)}
    more: dict[str, Value | None] = {}
    if "paint" in new and is_told(before.get("seasons")):
        more["seasons"] = None
    if "stock" in new and is_told(before.get("bore")):
        more["bore"] = None
    if "takes" in new:
        more |= {key: None for key in OF_THAT_WEIGHING if key in before}
    elif is_told(before.get("takes")) and "weighed_tip" not in before:
        more |= _weighed_with(before, told, new)
    return {key: value for key, value in more.items() if key not in told}


def retold(before: Entry, told: Mapping[str, Value | None], **also: Any) -> Entry:
    """Return an entry with some items told otherwise, and with what follows from that.

    >>> avon = {"pattern": "quill avon", "takes": "6BB", "paint": "red", "seasons": "3"}
    >>> retold(Entry(avon), {"paint": "black"}, alike=2).told
    {'pattern': 'quill avon', 'takes': '6BB', 'paint': 'black'}
    """
    return with_told(before, {**told, **refitted(before.told, told)}, **also)


def _weighed_with(
    before: Mapping[str, str], told: Mapping[str, Value | None], new: set[str]
) -> dict[str, Value | None]:
    """Return the tip with which a float took its shot, where it has another or shows another length."""
    stick = not new.isdisjoint(STICK)
    if not stick and "showing" not in new:
        return {}
    asker = Asker(Question().with_options(**before))
    then = settle_float(asker, settle_box(asker))[1]
    found: dict[str, Value | None] = {"takes_showing": f"{written(then.showing_mm)} mm"}
    if stick:
        found = {"weighed_tip": stock_words(then.stock), **found}
        found |= {was: before[now] for now, was in SINCE.items() if now in before}
    if "wet" not in told or stick:
        found["weighed_wet"] = f"{written(then.wet_mm)} mm"
    found = {key: value for key, value in found.items() if key not in before}
    if not stick and "wet" in before:
        found["wet"] = None  # of one stick, more of which shows, less is wet
    return found
