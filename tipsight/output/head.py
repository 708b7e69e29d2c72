"""What to do, said in places: do this, you get this, its price, or come in; the first six lines."""

from dataclasses import dataclass

from tipsight.advice.answer import Answer, Block, Change
from tipsight.advice.facts import CarryLight, ComeCloser, Limit, Note, OtherStretch, StandHigher
from tipsight.output import doing, readings, warned
from tipsight.output.layout import entry
from tipsight.output.measures import ANGLER, Reader, listed, seconds
from tipsight.output.telling import cure, shortcoming
from tipsight.sight import grades

MOST = 6
"""Lines."""
FIRST, NOW, GET, PRICE, OR, BENCH = "FIRST", "NOW", "YOU GET", "PRICE", "OR", "AT THE BENCH"
LEAST = {OR: 0, PRICE: 0, BENCH: 2}
"""How many clauses of a place are always said, if not one."""


@dataclass(frozen=True)
class Place:
    """One thing that is said: its label and its clauses, the most telling first."""

    label: str
    clauses: tuple[str, ...]
    bench: bool = False
    """Whether it is of the bench, not of the bank."""

    def lines(self, most: int | None = None) -> tuple[str, ...]:
        """Return it as text, so many of its clauses at the most."""
        return entry(self.label, "; ".join(self.clauses[:most]))


def places(answer: Answer, reader: Reader = ANGLER) -> tuple[Place, ...]:
    """Return what to do now, what comes of it, its price and another way; the same for the bench."""
    before, now = answer.tip_in_hand, answer.at_the_bank
    closer = move(answer)
    lane = tuple(
        warned.warning(one, answer.case, reader)
        for one in answer.warnings
        if one.kind == Note.SUN_LANE
    )
    others = tuple(
        f"{doing.change(one, reader)}: {one.block.visibility.grade}" for one in elsewhere(answer)
    )
    if closer is not None and not _is_followed(now.block):
        # nobody watches what he cannot follow: how far in to come is said before all else
        here = reader.far(answer.case.place.range_m)
        at_the_bank = [
            Place(NOW, (doing.change(closer, reader),)),
            Place(GET, (f"{closer.block.visibility.grade} there", _at_best(answer, here))),
            Place(PRICE, _price(closer)),
            Place(OR, others),
        ]
    else:
        nearer = () if closer is None else (_come_in(answer, closer, reader),)
        at_the_bank = [
            Place(NOW, (_order(now, before, reader),)),
            Place(GET, gets(answer, before, now.block)),
            Place(PRICE, _price(now)),
            Place(OR, (*nearer, *or_light(answer), *others)),
        ]
    said = (Place(FIRST, lane), *at_the_bank, *_bench(answer, reader))
    return tuple(one for one in said if one.clauses)


def _is_followed(block: Block) -> bool:
    return block.visibility.level >= grades.wanted()[0]


def _at_best(answer: Answer, here: str) -> str:
    seen = answer.at_the_bank.block.visibility.grade
    return f"at {here} it is {seen} at the best"


def _order(change: Change, before: Block, reader: Reader) -> str:
    return doing.change(change, reader) if change.actions else doing.left_alone(before, reader)


def gets(answer: Answer, before: Block, after: Block) -> tuple[str, ...]:
    """Return what comes of a tip: its grade, what is short or mended, and how soon it is missed."""
    now, then = before.visibility.grade, after.visibility.grade
    wanted = grades.grade(answer.case.wanted.level)
    first = then if before is after or now == then else f"{then}, where it was {now}"
    fails = [shortcoming(one.limit, wanted) for one in after.broken]
    mended = {one.limit for one in before.fails} - {one.limit for one in after.fails}
    cured = [
        cure(one.limit, wanted)
        for one in before.fails
        if one.limit in mended and one.limit is not Limit.SIGHT
    ]
    said = [first, *gained(before, after)]
    if fails:
        said.append(listed(fails))
    elif just_short(answer, after):
        said.append(f"just short of {wanted}")
    said += cured
    if after.visibility.notice_s is not None:
        said.append(f"a tip that stays down is noticed in {seconds(after.visibility.notice_s)}")
    return tuple(said)


def just_short(answer: Answer, block: Block) -> bool:
    """Return whether a tip does, though it is a little under the grade that is wanted."""
    return block.passes and block.visibility.level < answer.case.wanted.level


def gained(before: Block, after: Block) -> list[str]:
    """Return what single waters gain where the worst stays as it was."""
    if before.visibility.grade != after.visibility.grade:
        return []
    waters = zip(before.visibility.by_background, after.visibility.by_background, strict=True)
    return [
        f"on {new.name} water {new.grade}, where it was {old.grade}"
        for old, new in waters
        if new.grade != old.grade and new.level > old.level
    ]


def _price(change: Change) -> tuple[str, ...]:
    return (doing.undo(change),) if change.actions else ()


def light_stick(answer: Answer) -> Change | None:
    """Return the light stick that is offered, if there is one."""
    return next((one for one in answer.changes if one.does(CarryLight)), None)


def or_light(answer: Answer) -> tuple[str, ...]:
    """Return the light stick that is offered where no paint is enough."""
    stick = light_stick(answer)
    if stick is None or answer.at_the_bank.block.passes:
        return ()
    return (f"a light stick, where allowed: {doing.shot(stick.block)}",)


def move(answer: Answer) -> Change | None:
    """Return the change that comes closer, if there is one."""
    return next((change for change in answer.changes if change.range_m is not None), None)


def elsewhere(answer: Answer) -> tuple[Change, ...]:
    """Return the ways out that leave the tip alone: to stand higher, or another stretch."""
    return tuple(one for one in answer.changes if one.does(StandHigher) or one.does(OtherStretch))


def _come_in(answer: Answer, closer: Change, reader: Reader) -> str:
    same = closer.block.tip == answer.at_the_bank.block.tip
    last = next(one for one in closer.actions if isinstance(one, ComeCloser))
    said = doing.action(last, reader) if same else doing.change(closer, reader)
    return f"{said}: {closer.block.visibility.grade}"


def _bench(answer: Answer, reader: Reader) -> tuple[Place, ...]:
    change, before = answer.at_the_bench, answer.tip_in_hand
    if change is None:
        return (Place(BENCH, (why_nothing(answer, reader),), bench=True),)
    if not change.actions:
        said = "nothing to fit; the tip you have does"
        if not change.block.passes:
            said = f"nothing to fit: {why_nothing(answer, reader)}"
        return (Place(BENCH, (said,), bench=True),)
    sinks = readings.sinks(answer.case, change.block)
    first, *rest = gets(answer, before, change.block)
    clauses = (doing.change(change, reader), first, *rest[:1], sinks, *rest[1:])
    return (Place(BENCH, clauses, bench=True),)


def why_nothing(answer: Answer, reader: Reader = ANGLER) -> str:
    """Return the first of what stands in the way, without its end."""
    stands = next((one for one in answer.warnings if warned.in_the_way(one)), None)
    if stands is None:
        return "nothing that you have does better"
    return warned.warning(stands, answer.case, reader)


def head(answer: Answer, reader: Reader = ANGLER) -> tuple[str, ...]:
    """Return the first lines, six at the most: clauses that do not fit stand in ``--full``."""
    said = places(answer, reader)
    most = {one: len(one.clauses) for one in said}

    def lines() -> tuple[str, ...]:
        return tuple(line for one in said if most[one] for line in one.lines(most[one]))

    while len(lines()) > MOST:
        long = [one for one in said if most[one] > LEAST.get(one.label, 1)]
        if not long:
            break
        # the place that runs on longest gives up its last clause
        wordy = max(long, key=lambda one: (len(one.lines(most[one])), most[one]))
        most[wordy] -= 1
    return lines()
