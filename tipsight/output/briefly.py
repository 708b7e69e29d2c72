"""An answer in the fewest words: what a heading, a strip, a status line or a message has room for."""

from tipsight.advice.answer import Answer, Block, Sight
from tipsight.inputs.case import shown
from tipsight.load import change, law, shot
from tipsight.output import doing, head, measures, names, readings, shot_words, telling
from tipsight.output.measures import ANGLER, Reader, sentence


def _heading(words: str) -> str:
    return words[:1].upper() + words[1:]


def seen(answer: Answer, block: Block, reader: Reader = ANGLER) -> str:
    """Return how it is seen, as a heading."""
    sight = block.visibility
    far = reader.far(answer.case.place.range_m)
    likely = measures.levels(sight.low, sight.high)
    return _heading(
        f"{sight.grade} at {far}: level {measures.level(sight.level)}, likely {likely}"
    )


def swim(answer: Answer, reader: Reader = ANGLER) -> str:
    """Return where and on which water."""
    waters = [names.short_water(one) for one in answer.case.stretches]
    return f"{reader.far(answer.case.place.range_m)}, {measures.listed(waters)}"


def advised(answer: Answer, reader: Reader = ANGLER) -> str:
    """Return what to do at the bank, and how it is seen then."""
    bank = answer.at_the_bank
    order = [doing.action(one, reader) for one in bank.actions] or ["leave it as it is"]
    return _heading(f"{measures.listed(order)}: {bank.block.visibility.grade}")


def ride(block: Block) -> str:
    """Return how it rides, as a heading."""
    handled = block.handling
    return _heading(measures.rides(handled.ride_margin, handled.upright))


def sinks(answer: Answer, block: Block) -> str:
    """Return what sinks it, as a heading."""
    told = readings.force(answer.case, block.handling.sink_force_g)
    return _heading(f"{told.shot} {'sink' if told.many else 'sinks'} it")


def takes(block: Block) -> str:
    """Return what hangs on the line with it, as a heading."""
    each = [one.name if one.count == 1 else f"{one.count} {one.name}" for one in block.load.shot]
    return f"{measures.grams(block.load.shot_g)}: {', '.join(each) or 'no shot'}"


def doubt(answer: Answer) -> str:
    """Return the biggest doubt, as a heading."""
    if not answer.doubts:
        return "Nothing much in doubt"
    return f"Most unsure: {telling.doubt(answer.doubts[0])}"


def tip(block: Block) -> tuple[str, ...]:
    """Return a tip in short lines: how long, of what, each band from the top down.

    Examples
    --------
    >>> from tipsight import Question, advise
    >>> tip(advise(Question(showing="20 mm", diameter="3 mm", paint="red")).tip_in_hand)
    ('20 mm red', '3 mm solid')
    """
    drawn = block.tip
    bands = shown(drawn.bands, drawn.showing_mm)
    long = f"{drawn.showing_mm:.0f} mm"
    if len(bands) < 2:
        lines: tuple[str, ...] = (f"{long} {bands[0].paint if bands else 'bare'}",)
    else:
        lines = tuple(
            f"{round(one.to_top_mm) - round(one.from_top_mm)} mm {one.paint}" for one in bands
        )
    return (*lines, names.stick(drawn.stock))


def reach(label: str, seen: Sight, wanted: float, reader: Reader = ANGLER) -> str:
    """Return a strip's own line: whose it is, and where that tip goes.

    Examples
    --------
    >>> seen = Sight("dark", 4.0, 3.0, 5.0, "followed", 33.0, 60.0, None, 0.0)
    >>> reach("As it is", seen, 5.0), reach("As it is", seen, 5.0, Reader("m"))
    ('As it is: goes at about 36 yd', 'As it is: goes at about 33 m')
    """
    return f"{label}: {reader.goes(seen.goes_at_m, seen.level, wanted)}"


def runs(seen: Sight, reader: Reader = ANGLER) -> str:
    """Return the grades of a strip in words, near to far.

    Examples
    --------
    >>> from tipsight.advice.answer import Run
    >>> seen = Sight("dark", 4.0, 3.0, 5.0, "followed", 33.0, 60.0, None, 0.0,
    ...     (Run("easy", 9.144, 18.288), Run("followed", 18.288, 54.864)))
    >>> runs(seen)
    'easy to 20 yd, followed to 60 yd'
    """
    return ", ".join(f"{one.grade} to {reader.far(one.to_m)}" for one in seen.runs)


def _step(answer: Answer, more_g: float) -> str:
    box = answer.case.box
    near = change.nearest(abs(more_g), law.usable(box.shot or shot.sizes(box.shot_metal)))
    return f"{shot_words.near(near)} {'on' if more_g > 0 else 'off'}"


def changed(before: Answer, after: Answer) -> str:
    """Return what a tap did to the tip in hand and to the advised one, in one line.

    Examples
    --------
    >>> from tipsight import Question, advise
    >>> told = {"behind": ["dark"], "paint": "white", "showing": "20 mm", "takes": "4BB"}
    >>> near, far = (advise(Question(distance=f"{yd} yd", **told)) for yd in (20, 40))
    >>> changed(far, far)
    'the same answer'
    """
    said = []
    old, new = before.tip_in_hand, after.tip_in_hand
    levels = [measures.level(one.visibility.level) for one in (old, new)]
    if levels[0] != levels[1]:
        said.append(f"level {levels[0]} to {levels[1]}")
    grades = [one.visibility.grade for one in (old, new)]
    if grades[0] != grades[1]:
        said.append(f"now {grades[1]}")
    more_g = new.load.shot_g - old.load.shot_g
    if abs(more_g) >= 0.005:
        said.append(_step(after, more_g))
    if said:
        return "; ".join(said)
    orders = [(doing.change(one.at_the_bank), one.at_the_bench) for one in (before, after)]
    return "the same answer" if orders[0] == orders[1] else "the tip as it was; other advice"


def message(answer: Answer, reader: Reader = ANGLER) -> str:
    """Return the answer as one sends it to a friend, without its link."""
    bank, bench = answer.at_the_bank, answer.at_the_bench
    gets = head.gets(answer, answer.tip_in_hand, bank.block)
    order = (
        doing.change(bank, reader)
        if bank.actions
        else doing.left_alone(answer.tip_in_hand, reader)
    )
    said = [
        f"{reader.distance(answer.case.place.range_m)}: {order}",
        measures.listed(list(gets[:1])),
    ]
    lines = [sentence("; ".join(said))]
    if bench is not None and bench.actions:
        there = bench.block.visibility.grade
        lines.append(sentence(f"At the bench: {doing.change(bench, reader)}; {there}"))
    return "\n".join(lines)
