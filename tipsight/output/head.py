"""The first lines: what to do now at the bank, and what to fit at the bench."""

from tipsight.advice.answer import Answer, Block, Change
from tipsight.advice.facts import CarryLight, Limit
from tipsight.output import doing, warned
from tipsight.output.layout import WIDTH, hanging
from tipsight.output.measures import ANGLER, Reader, level, levels, listed, sentence
from tipsight.output.telling import shortcoming, shortcomings

MOST = 6


def likely(block: Block) -> str:
    """Return the level of a tip with its range, and the worst of several waters."""
    seen = block.visibility
    where = f" on {seen.worst.name} water, the worst" if len(seen.by_background) > 1 else ""
    return f"Level {level(seen.worst.level)}, likely {levels(seen.worst.low, seen.worst.high)}{where}."


def bank(answer: Answer, wanted: str, reader: Reader = ANGLER) -> tuple[str, ...]:
    """Return what to do now: the order with what comes of it, then what else may be added."""
    change, before = answer.at_the_bank, answer.tip_in_hand
    now = before.visibility.grade
    short = shortcomings(change.block, wanted)
    closer = move(answer)
    if not change.actions:
        said = f"{doing.left_alone(before, reader)}. "
        said += f"As it is: {now}; {short}." if short else f"As it is: {now}, and that is enough."
    elif closer is not None and short and not _lifts(before, change.block) and same_tip(answer):
        asked = reader.far(answer.case.place.range_m)
        stick = light_stick(answer)
        said = (
            f"{doing.change(closer, reader)}: {closer.block.visibility.grade} there. At {asked} "
        )
        if stick is None:
            said += f"nothing that can be done now lifts it: it stays {now}."
        else:
            said += f"only a light stick shows, if your rules allow: {doing.shot(stick.block)}."
        return (said, undo(closer))
    else:
        said = f"{doing.change(change, reader)}. {turns(before, change.block)}"
        if not short:
            said += ", and that is enough."
        else:  # what stays as it was on the worst water is short enough said
            said += "." if gained(before, change.block) else f": the best to be had, yet {short}."
    return (said, or_light(answer), nearer(answer, reader), undo(change), likely(change.block))


def same_tip(answer: Answer) -> bool:
    """Return whether one comes closer with the tip that is advised here."""
    closer = move(answer)
    return closer is not None and closer.block.tip == answer.at_the_bank.block.tip


def _lifts(before: Block, after: Block) -> bool:
    other = before.visibility.grade != after.visibility.grade
    return other or bool(gained(before, after))


def turns(before: Block, after: Block) -> str:
    """Return the grade now and then, with what else is amiss now, or what one water gains."""
    now, then = before.visibility.grade, after.visibility.grade
    fails = [shortcoming(f.limit, "") for f in before.fails if f.limit is not Limit.SIGHT]
    if fails and after.passes:
        return f"Now {now}, but {listed(fails)}; then {then}"
    if now != then:
        return f"Now {now}, then {then}"
    more = gained(before, after)
    return "; ".join([f"It stays {now}" + " on the worst water" * bool(more), *more])


def gained(before: Block, after: Block) -> list[str]:
    """Return what single waters gain where the worst stays as it was."""
    if before.visibility.grade != after.visibility.grade:
        return []
    waters = zip(before.visibility.by_background, after.visibility.by_background, strict=True)
    return [
        f"on {new.name} water now {old.grade}, then {new.grade}"
        for old, new in waters
        if new.grade != old.grade and new.level > old.level
    ]


def light_stick(answer: Answer) -> Change | None:
    """Return the light stick that is offered, if there is one."""
    return next((one for one in answer.changes if one.does(CarryLight)), None)


def or_light(answer: Answer) -> str:
    """Return the light stick that is offered where no paint is enough."""
    stick = light_stick(answer)
    if stick is None or answer.at_the_bank.block.passes:
        return ""
    return f"Or a light stick, where allowed: {doing.shot(stick.block)}."


def undo(change: Change) -> str:
    """Return whether a change can be undone, in brackets; nothing where nothing is done."""
    return f"({sentence(doing.undo(change))})" if change.actions else ""


def move(answer: Answer) -> Change | None:
    """Return the change that comes closer, if there is one."""
    return next((change for change in answer.changes if change.range_m is not None), None)


def nearer(answer: Answer, reader: Reader = ANGLER) -> str:
    """Return how near the best of the tips would do, where none does at the asked distance."""
    closer = move(answer)
    if closer is None:
        return ""
    there = (
        doing.action(closer.actions[-1], reader)
        if same_tip(answer)
        else doing.change(closer, reader)
    )
    return f"Or {there}: {closer.block.visibility.grade}."


def bench(answer: Answer, wanted: str, reader: Reader = ANGLER) -> tuple[str, ...]:
    """Return what to fit, with what comes of it; where nothing can be fitted, why."""
    change = answer.at_the_bench
    if change is None or not change.actions:
        if change is not None and change.block.passes:
            return (f"{doing.change(change, reader)}.",)
        return (f"nothing passes: {why_nothing(answer, reader)}.",)
    short = shortcomings(change.block, wanted)
    said = f"{doing.change(change, reader)}. {turns(answer.tip_in_hand, change.block)}"
    return (said + (f": the best to be had, yet {short}." if short else "."), likely(change.block))


def why_nothing(answer: Answer, reader: Reader = ANGLER) -> str:
    """Return the first of what stands in the way, without its end."""
    stands = next((one for one in answer.warnings if warned.in_the_way(one)), None)
    if stands is None:
        return "nothing that you have does"
    return warned.warning(stands, answer.case, reader)


def head(answer: Answer, wanted: str, reader: Reader = ANGLER) -> tuple[str, ...]:
    """Return the first lines, six at the most: what to do now, then what to fit."""
    enough = answer.at_the_bank.block.passes
    title = "OR AT THE BENCH: " if enough else "AT THE BENCH: "
    lines: list[str] = []
    for label, pieces in (
        ("NOW, AT THE BANK: ", bank(answer, wanted, reader)),
        (title, bench(answer, wanted, reader)),
    ):
        said = label + pieces[0]
        for more in filter(None, pieces[1:]):
            if len(hanging(f"{said} {more}")) <= MOST // 2:
                said += f" {more}"
        lines += hanging(said)
    return tuple(_cut(lines))


def _cut(lines: list[str]) -> list[str]:
    """Return no more than six lines; a sentence that is cut off ends in dots."""
    if len(lines) <= MOST:
        return lines
    last = lines[MOST - 1][: WIDTH - 4].rsplit(" ", 1)[0].rstrip(",;")
    return [*lines[: MOST - 1], f"{last} ..."]
