"""The whole question answered: what to do now, what to fit, what it costs, why, and how sure."""

from collections.abc import Iterable, Iterator, Mapping
from concurrent.futures import Executor
from dataclasses import replace
from functools import partial
from itertools import chain, islice

from tipsight import tables
from tipsight.advice import doubtful, fit, ladder, on_the_spot, reasons
from tipsight.advice.answer import Answer, Block, Change
from tipsight.advice.bench import Shelf, shelf
from tipsight.advice.cautions import cautions
from tipsight.advice.close_look import close_look
from tipsight.advice.facts import Note, Warn
from tipsight.advice.swim import swim
from tipsight.inputs.case import Case
from tipsight.inputs.items import words_of
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle
from tipsight.load.causes import account


def advise(question: Question) -> Answer:
    """Return which tip, in which paint, and how much shot, for a question as a person tells it.

    Parameters
    ----------
    question : Question
        What the angler says; what is not told takes its default, which the answer lists.

    Returns
    -------
    Answer
        All of it as facts, nothing rounded.

    Raises
    ------
    Mistakes
        With everything in the question that is to be mended.

    Examples
    --------
    >>> from tipsight.inputs.question import Question
    >>> answer = advise(Question(distance="12 yd", behind=["dark"], paint="white"))
    >>> answer.tip_in_hand.visibility.grade in ("easy", "stands out")
    True
    """
    return advise_case(settle(question), question.told())


def examine(question: Question) -> Block:
    """Return how the tip in hand is seen, rides and loads; nothing else is looked for.

    Parameters
    ----------
    question : Question
        What the angler says.

    Returns
    -------
    Block
        What ``advise(question).tip_in_hand`` is, at a part of the cost.

    Raises
    ------
    Mistakes
        With everything in the question that is to be mended.

    Examples
    --------
    >>> from tipsight.inputs.question import Question
    >>> examine(Question(distance="12 yd", behind=["dark"], paint="white")).visibility.grade
    'stands out'
    """
    case = settle(question)
    return close_look(swim(case), case.tip)


def sweep(questions: Iterable[Question], executor: Executor | None = None) -> Iterator[Answer]:
    """Yield the answer to each question, in their order, as they come.

    Parameters
    ----------
    questions : iterable of Question
        Swims, floats, tips: what they share (the body of a float) is worked out once.
    executor : concurrent.futures.Executor, optional
        Answers them side by side; own tables go with the questions.

    Yields
    ------
    Answer
        What `advise` returns for each.

    Raises
    ------
    Mistakes
        At the first question in which something is to be mended.

    Examples
    --------
    >>> from tipsight.inputs.question import Question
    >>> [round(a.case.place.range_m) for a in sweep(Question(distance=f"{y} yd") for y in (20, 30))]
    [18, 27]
    """
    if executor is None:
        return map(advise, questions)
    answers = executor.map(partial(_advise_all, tables.in_use()), list(_batches(questions)))
    return chain.from_iterable(answers)


BATCH = 16
"""Questions that one worker takes at a time, so that those that are alike stay together."""


def _batches(questions: Iterable[Question]) -> Iterator[list[Question]]:
    waiting = iter(questions)
    while batch := list(islice(waiting, BATCH)):
        yield batch


def _advise_all(own: tables.Tables | None, questions: list[Question]) -> list[Answer]:
    """Answer questions with the tables that stood where they were put; a worker has its own."""
    with tables.using(own):
        return [advise(question) for question in questions]


def advise_case(case: Case, told: Mapping[str, object] | None = None) -> Answer:
    """Return the same as `advise` for a question that is in numbers already.

    Parameters
    ----------
    case : Case
        The question.
    told : dict, optional
        What was told, by item, to be kept with the answer.

    Returns
    -------
    Answer
        All of it as facts, nothing rounded.

    Raises
    ------
    Mistakes
        If the float sinks, or is shorter than what is glued into it.
    """
    here = swim(case)
    choices = shelf(here)
    bolder = _bolder(choices)
    if bolder is not None:
        here, choices = bolder.swim, bolder
    in_hand = close_look(here, case.tip)
    changes = on_the_spot.changes(here, in_hand)
    now = on_the_spot.lead(changes)
    fitted = fit.fit(choices, in_hand, now.block)
    bench = fitted.change and _accounted(case, fitted.change)
    offered = (*changes, *((bench,) if bench else ()))
    advised = bench.block if bench else now.block
    leading = _leading(now, bench)
    return Answer(
        case=here.case,
        question=dict(told or {}),
        assumed=case.assumed,
        tip_in_hand=in_hand,
        at_the_bank=now,
        at_the_bench=bench,
        changes=offered,
        next_step=fit.next_steps(choices, in_hand),
        by_distance=ladder.by_distance(here, in_hand.tip, advised.tip),
        trade_off=ladder.trade_off(here, advised.tip),
        reasons=reasons.reasons(here, choices, in_hand, leading.block, bench),
        doubts=reasons.doubts(here, leading.block.tip),
        warnings=(
            *doubtful.asked_again(here),
            *((Warn(Note.BOLD_ASKED),) if bolder is not None else ()),
            *fitted.in_the_way,
            *doubtful.warnings(here, choices, leading.block),
        ),
        cautions=cautions(here, now, bench, offered),
    )


def _bolder(choices: Shelf) -> Shelf | None:
    """Return the shelf for bold bites, where none were told and no tip does with ordinary ones."""
    wanted = choices.swim.case.wanted
    if wanted.bites_told or any(f.allowed.any() for f in choices.fields()):
        return None
    share = next(word.number for word in words_of("bites") if word.word == "bold")
    bolder = choices.wanting(replace(wanted, bite_share=share))
    return bolder if any(f.allowed.any() for f in bolder.fields()) else None


def _accounted(case: Case, bench: Change) -> Change:
    """Return what is fitted with why the float then takes more or less."""
    if not bench.actions:
        return bench
    return replace(bench, causes=account(case, case, bench.block.tip).parts)


def _leading(now: Change, bench: Change | None) -> Change:
    return now if now.block.passes or bench is None else bench
