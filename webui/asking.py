"""From an address to the question that it puts, and back: one address is one answer."""

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from urllib.parse import parse_qsl, urlencode

from werkzeug.datastructures import MultiDict

from tipsight.errors import Mistake, Mistakes, OutOfRange
from tipsight.inputs.items import ITEMS
from tipsight.inputs.learnt import Learnt
from tipsight.inputs.options import as_said, as_text
from tipsight.inputs.question import Question, Value, check_items
from tipsight.inputs.settle import settle
from webui.reader_units import Units

MOST_LETTERS, MOST_PARTS, MOST_NAME = 2000, 160, 60
WAS = "was_"
WHO, WATER = "who", "water"
"""Of an address: whose eyes, and which of the own waters, by name."""
CARD = "card"
"""Of an address of the view: how many pixels wide a bank card is on the screen that shows it."""
Typed = dict[str, tuple[str, ...]]
"""What was typed, by item; more than one text where the address says it more than once."""


@dataclass(frozen=True)
class Asked:
    """What an address asks."""

    typed: Typed
    units: Units = field(default_factory=Units)
    was: Typed = field(default_factory=dict)
    """What some items were before, so that the page can tell what changed; empty: not told."""
    own: bool = False
    """Whether nobody typed anything, so that the page's own question stands."""
    beside: str = ""
    """The address of an answer that is kept beside this one."""
    learnt: Learnt = field(default=Learnt())
    """Of the one whose page it is; it stands in no address."""
    who: str = ""
    """Whose eyes; those of the one whose page it is if not told."""
    water: str = ""
    """Which of the own waters."""

    @property
    def chosen(self) -> tuple[tuple[str, str], ...]:
        """What an address says of units, person and water."""
        named = tuple((key, name) for key, name in ((WHO, self.who), (WATER, self.water)) if name)
        return (*self.units.args, *named)

    @property
    def key(self) -> tuple[str, Learnt]:
        """What all that is made of its answer hangs on."""
        return self.query(), self.learnt

    def query(self) -> str:
        """Return the one address of this question."""
        pairs = [(key, text) for key in _ordered(self.typed) for text in self.typed[key]]
        pairs = pairs or [("distance", "")]
        pairs += self.chosen
        pairs += [("beside", self.beside)] if self.beside else []
        pairs += [
            (WAS + key, text) for key in _ordered(self.was) for text in self.was[key] or ("",)
        ]
        return urlencode(pairs, safe="/:;,")

    def is_short(self, args: MultiDict[str, str]) -> bool:
        """Return whether an address that asks this is the one address of it."""
        if self.own:
            return True
        return sorted(parse_qsl(self.query(), keep_blank_values=True)) == sorted(
            (key, text) for key, text in args.items(multi=True) if key != CARD
        )

    def question(self) -> Question:
        """Return the question, or raise Mistakes: of unknown items, or longer than any question."""
        return replace(_question(self.typed), learnt=self.learnt)

    @property
    def tail(self) -> str:
        """What follows the question mark of an address that leads elsewhere with this question.

        Where the page's own question stands, nothing but units and who asks.
        """
        return urlencode(self.chosen) if self.own else self.plain().query()

    @property
    def address(self) -> str:
        """The same with its question mark, or nothing."""
        return f"?{self.tail}" if self.tail else ""

    def plain(self) -> "Asked":
        """Return the same question with nothing beside it, and no word of what it was before."""
        return replace(self, was={}, beside="")

    def keeping(self) -> str:
        """Return what a tap sets that keeps this answer beside the next."""
        return urlencode({"beside": self.plain().query()})

    def kept_question(self) -> Question | None:
        """Return the question of the answer that is kept beside this one; None where none is."""
        if not self.beside:
            return None
        args = MultiDict(parse_qsl(self.beside[:MOST_LETTERS], keep_blank_values=True))
        kept = read(args, Question())
        return replace(_question(kept.typed), learnt=self.learnt)

    def retold(self, wrong: Mistakes) -> tuple[Mistake, ...]:
        """Return what is wrong with the question, told in the page's units."""
        try:
            settle(self.question(), self.units)
        except Mistakes as again:
            return again.mistakes
        return wrong.mistakes

    def before(self) -> Question | None:
        """Return the question before the change that the address tells of."""
        if not self.was:
            return None
        typed = {k: v for k, v in {**self.typed, **self.was}.items() if v}
        return replace(_question(typed), learnt=self.learnt)

    def with_told(self, changes: dict[str, str]) -> "Asked":
        """Return the question with some items told otherwise, and what they were before."""
        typed = _changed(self.typed, changes)
        altered = [
            key for key in changes if key in ITEMS and typed.get(key) != self.typed.get(key)
        ]
        was = {key: self.typed.get(key, ()) for key in altered}
        return replace(self, typed=typed, was=was, own=False)

    def link(self, changes: dict[str, str]) -> str:
        """Return an address that leads to the question with some items told otherwise.

        From the page's own question it says the changes alone, and leads on to the whole address.
        """
        if not self.own:
            return self.with_told(changes).query()
        return urlencode([*self.chosen, ("set", urlencode(self.apart(changes)))])

    def link_beside(self, changes: dict[str, str]) -> str:
        """Return an address with some items told otherwise, and this answer kept beside it."""
        told = self.with_told(changes)
        return replace(told, was={}, beside=self.plain().query()).query()

    def apart(self, changes: dict[str, str]) -> dict[str, str]:
        """Return those of some changes that tell an item otherwise than it is told."""
        return {
            key: text for key, text in changes.items() if self.typed.get(key, ("",)) != (text,)
        }

    def in_units(self, units: Units) -> "Asked":
        """Return the same question with the page in other units."""
        return replace(self, units=units)


def card_px(args: MultiDict[str, str]) -> float | None:
    """Return how wide a bank card is on the reader's screen [px], None where it is not told."""
    from tipsight.pictures import truesize

    text = args.get(CARD, "").strip()[:40]
    try:
        if text:
            truesize.of_card(float(text))
        return float(text) if text else None
    except OutOfRange as outside:
        raise Mistakes([Mistake(CARD, text, str(outside), "")]) from outside
    except ValueError:
        told = f"'{text}' will not do; say a whole number, 100 to 4000 (for example 324)"
        raise Mistakes([Mistake(CARD, text, told, "")]) from None


def _ordered(keys: Iterable[str]) -> list[str]:
    order = list(ITEMS)
    return sorted(keys, key=lambda key: (order.index(key) if key in ITEMS else len(order), key))


def _changed(typed: Typed, changes: dict[str, str]) -> Typed:
    merged = {**typed, **{key: (text,) if text.strip() else () for key, text in changes.items()}}
    return {key: texts for key, texts in merged.items() if texts}


def _question(typed: Typed) -> Question:
    mistakes = [
        Mistake(
            key,
            text[:40] + "...",
            f"this is longer than any answer, {MOST_LETTERS} letters at the most",
            "",
        )
        for key, texts in typed.items()
        for text in texts
        if len(text) > MOST_LETTERS
    ]
    if sum(map(len, typed.values())) > MOST_PARTS:
        mistakes.append(Mistake("address", "", f"this says more than {MOST_PARTS} things", ""))
    if mistakes:
        raise Mistakes(mistakes)
    told: dict[str, Value | None] = {k: v[0] if len(v) == 1 else v for k, v in typed.items()}
    try:
        check_items(told)
    except Mistakes as unknown:
        raise Mistakes([*unknown.mistakes, *_wrong(told)]) from None
    return Question().with_options(**told)


def _wrong(told: dict[str, Value | None]) -> tuple[Mistake, ...]:
    """Return what is wrong with those items that there are."""
    try:
        settle(Question().with_options(**{k: v for k, v in told.items() if k in ITEMS}))
    except Mistakes as wrong:
        return wrong.mistakes
    return ()


def typed_of(question: Question) -> Typed:
    """Return a question as it would be typed into the page, a list in one line.

    >>> typed_of(Question(distance="40 yd", pen=False, behind=("dark 60%", "bright")))
    {'distance': ('40 yd',), 'behind': ('dark 60%; bright',), 'pen': ('no',)}
    """
    return {
        key: (
            "; ".join(as_said(ITEMS[key], value))
            if isinstance(value, tuple)
            else as_text(ITEMS[key], value),
        )
        for key, value in question.told().items()
    }


def read(args: MultiDict[str, str], own: Question, *, strict: bool = False) -> Asked:
    """Return what an address asks, and the page's own question where it names no item.

    Its parts are items, ``far`` and ``high`` (units), ``who`` and ``water`` (of whom is learned),
    ``set`` (items or units to be told otherwise),
    ``beside`` (the address of a kept answer) and ``was_...`` (what an item was before);
    ``card`` is the view's own. A bare number takes the page's unit unless ``strict``, as it stays
    one for the command.
    """
    units = Units.told(args)
    typed: Typed = {}
    was: Typed = {}
    named = False
    for key, text in args.items(multi=True):
        if key.startswith(WAS):
            if (name := key.removeprefix(WAS)) in ITEMS:
                was[name] = (*was.get(name, ()), text) if text.strip() else was.get(name, ())
        elif key not in ("far", "high", "set", "beside", CARD, WHO, WATER):
            named = True
            if text.strip():
                said = text if strict or key not in ITEMS else units.spoken(ITEMS[key], text)
                typed[key] = (*typed.get(key, ()), said)
    if not named:
        typed = typed_of(own)
    changes: dict[str, str] = {
        k: t
        for one in args.getlist("set")
        for k, t in parse_qsl(one[:MOST_LETTERS], keep_blank_values=True)
    }
    kept = changes.pop("beside", args.get("beside", ""))[:MOST_LETTERS]
    asked = Asked(typed, units, was if named else {}, own=not named, beside=kept)
    who, water = (args.get(key, "").strip()[:MOST_NAME] for key in (WHO, WATER))
    asked = replace(asked, learnt=own.learnt, who=who, water=water)
    if kept:
        asked = replace(asked, own=False)
    switched: dict[str, str] = {k: changes.pop(k) for k in ("far", "high") if k in changes}
    asked = asked.with_told(changes) if changes else asked
    return asked.in_units(Units.told(dict(units.args) | switched))
