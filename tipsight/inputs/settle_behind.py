"""The water behind the tip: stretches by word, or by the bank that they mirror."""

import math
import re
from dataclasses import replace

from tipsight.inputs.case import Light, Stretch
from tipsight.inputs.items import Word, choose, names_of, words_of
from tipsight.inputs.legs import MOST
from tipsight.inputs.quantities import Unread, clean, length_m, number
from tipsight.inputs.spoken import Spoken
from tipsight.inputs.values import Asker

_SHARE = re.compile(r"[,\s]*([-+]?[\d.,]+)\s*(?:%|per ?cent)(?: of (?:the|it)(?: trot)?)?")
_HIGH = re.compile(r"(.*?)\s*\b(\d.*?|[.,]\d.*?)\s*(?:high|tall)\b")
_BEYOND = re.compile(r"(.+?)\s*(?:beyond|behind|past)(?: the (?:float|tip))?")
_LIT = {
    "sunlit": True,
    "lit": True,
    "in the sun": True,
    "unlit": False,
    "in shade": False,
    "shaded": False,
    "back lit": False,
    "backlit": False,
}
_NEXT = re.compile(r",(?!\d)(?!\s*[\d.]+\s*(?:%|per ?cent)\s*(?:,|$))|\band\b", re.IGNORECASE)
_OF_A_BANK = ("high", "tall", "beyond")
EXAMPLE = "trees 9 m high, 20 yd beyond the float, unlit, 40%"
Named = tuple[Stretch, float | None]


def settle_behind(asker: Asker, light: Light) -> tuple[Stretch, ...]:
    """Return the stretches of water behind the tip, whose shares add to 1.

    "Not sure" is dark and bright, each marked as what it might be. The sun of ``light`` says
    whether a bank that was not said to be lit is.

    >>> from tipsight.inputs.question import Question
    >>> asker = Asker(Question(behind="dark 60%; bright"))
    >>> [(stretch.name, stretch.share) for stretch in settle_behind(asker, Light())]
    [('dark', 0.6), ('bright', 0.4)]
    """
    texts = [piece for text in asker.take("behind") for piece in _pieces(text)]
    named: list[Named] = []
    for text in texts:
        try:
            named.append(_read(text, light, asker.spoken))
        except Unread as unread:
            asker.unread("behind", unread, said=text, example=f"dark 60%, or {EXAMPLE}")
    if len(named) < len(texts):
        return ()
    shares = _shares(asker, [share for _, share in named])
    stretches: list[Stretch] = []
    for (stretch, _), share in zip(named, shares, strict=True):
        if stretch.name == "not sure":
            stretches += _might_be(share)
        else:
            stretches.append(replace(stretch, share=share))
    different = _merged(stretches)
    if len(different) > MOST:
        asker.wrong(
            "behind",
            f"these are {len(different)} different waters; {MOST} are the most",
            said="",
            example="dark 60%; bright 40%",
        )
    return _apart(different)


def _might_be(share: float) -> tuple[Stretch, ...]:
    """Return what a part of the trot might mirror, where it is not known."""
    kinds = ("dark", "bright")
    return tuple(replace(_word(kind, share / len(kinds)), might_be=True) for kind in kinds)


def _shares(asker: Asker, told: list[float | None]) -> list[float]:
    given = [share for share in told if share is not None]
    open_ = len(told) - len(given)
    left = 1.0 - sum(given)
    if (
        any(not 0 < share <= 1 for share in given)
        or (open_ and left <= 0)
        or (not open_ and given and abs(left) > 0.05)
    ):
        total = f"{100 * sum(given):g} %"
        asker.wrong(
            "behind",
            f"the shares add to {total}; they must add to 100 %, each above 0",
            example="dark 60%; bright 40%",
        )
        return [1.0 / len(told)] * len(told)
    if not open_ and given:
        return [share / sum(given) for share in given]
    each = round(left / open_, 12) if open_ else 0.0
    return [each if share is None else share for share in told]


def _pieces(text: str) -> list[str]:
    """Return the stretches of ``dark 60%, bright 40%``; a bank, with its own commas, stays whole."""
    if any(word in clean(text) for word in _OF_A_BANK):
        return [text]
    return [part.strip() for part in _NEXT.split(text)]


def _read(text: str, light: Light, spoken: Spoken) -> Named:
    plain = clean(text)
    share = None
    if found := _SHARE.search(plain):
        share = number(found[1]) / 100
        plain = (plain[: found.start()] + plain[found.end() :]).strip(" ,")
    if any(word in plain for word in _OF_A_BANK):
        return _bank(plain, light, spoken), share
    word = choose(words_of("behind"), plain)
    return (Stretch(name="not sure") if word.word == "not sure" else _word(word.word, 1.0)), share


def _word(name: str, share: float) -> Stretch:
    skyline = next(word.number for word in words_of("behind") if word.word == name)
    lane, patchy = name == "sun lane", name == "broken"
    return Stretch(name, share, bank_height_deg=skyline, sun_ahead=lane, patchy=patchy)


def _bank(plain: str, light: Light, spoken: Spoken) -> Stretch:
    kind, height, beyond, lit = "", 0.0, 0.0, None
    for part in (part.strip() for part in re.split(r",(?!\d)", plain)):
        if found := _HIGH.fullmatch(part):
            kind, height = found[1] or kind, length_m(found[2])
        elif found := _BEYOND.fullmatch(part):
            beyond = length_m(found[1])
        elif part.replace("-", " ") in _LIT:
            lit = _LIT[part.replace("-", " ")]
        elif not kind:
            kind = part
        else:
            raise Unread(f"{part!r} is not understood")
    if not (0 < height <= 100 and 0 < beyond <= 5000):
        raise Unread(
            f"say how high it is, to {spoken.most_high(100)}, and how far beyond the float it "
            f"stands, to {spoken.most_far(5000)}",
            says_all=True,
        )
    if lit is None:
        lit = light.beam and light.sun_height_deg > 0 and light.sun_bearing_deg >= 90
    skyline = math.degrees(math.atan2(height, beyond))
    bank = _kind(kind) if kind else "dark trees"
    mirrors = kind or "bank"
    name = f"{mirrors}, {skyline:.0f} deg"
    return Stretch(name, 1.0, skyline, bank, bank_sunlit=lit, mirrors=mirrors)


def _kind(text: str) -> str:
    aliases = tuple(Word(word.word, word.value or word.word) for word in words_of("bank"))
    words = aliases + tuple(Word(word.word, word.word) for word in names_of("banks"))
    try:
        found = choose(words, text)
    except Unread as unread:
        names = ", ".join(word.word for word in names_of("banks"))
        raise Unread(f"{unread} the banks are {names}".strip()) from None
    return found.value


def _merged(stretches: list[Stretch]) -> list[Stretch]:
    """Return each different water once, by the first name that it was told, with all its share."""
    found: dict[Stretch, Stretch] = {}
    for one in stretches:
        water = replace(one, name="", mirrors="", share=0.0)
        first = found.get(water, replace(one, share=0.0))
        found[water] = replace(first, share=first.share + one.share)
    return list(found.values())


def _apart(stretches: list[Stretch]) -> tuple[Stretch, ...]:
    seen: dict[str, int] = {}
    result = []
    for stretch in stretches:
        seen[stretch.name] = seen.get(stretch.name, 0) + 1
        name = stretch.name if seen[stretch.name] == 1 else f"{stretch.name} {seen[stretch.name]}"
        result.append(replace(stretch, name=name))
    return tuple(result)
