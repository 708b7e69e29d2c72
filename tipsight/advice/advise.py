"""The whole question answered: what to do now, what to fit, what it costs, why, and how sure."""

from collections.abc import Mapping

from tipsight.advice import bank, fit, ladder, reasons, words
from tipsight.advice.answer import Answer, Change
from tipsight.advice.bench import shelf
from tipsight.advice.cautions import cautions
from tipsight.advice.examine import examine
from tipsight.advice.swim import swim
from tipsight.inputs.case import Case
from tipsight.inputs.question import Question
from tipsight.inputs.settle import settle


def advise(question: Question) -> Answer:
    """Return which tip, in which paint, and how much shot, for a question as a person tells it.

    Parameters
    ----------
    question : Question
        What the angler says; what is not told takes its default, which the answer lists.

    Returns
    -------
    Answer
        All of it, nothing rounded.

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


def advise_case(case: Case, told: Mapping[str, object] | None = None) -> Answer:
    """Return the same for a question that is in numbers already.

    Parameters
    ----------
    case : Case
        The question.
    told : dict, optional
        What was told, by item, to be kept with the answer.

    Returns
    -------
    Answer
        All of it, nothing rounded.

    Raises
    ------
    Mistakes
        If the float sinks, falls over, or has no room for its tip.
    """
    here = swim(case)
    in_hand = examine(here, case.tip)
    choices = shelf(here)
    fitted = fit.fit(choices, in_hand)
    bench = fitted.change
    changes = bank.changes(here, in_hand)
    now = bank.lead(changes)
    offered = (*changes, *((bench,) if bench else ()))
    advised = bench.block if bench else now.block
    leading = _leading(now, bench)
    return Answer(
        case=case,
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
            *words.asked_again(here),
            *fitted.warnings,
            *words.warnings(here, choices, leading.block),
        ),
        cautions=cautions(here, now, bench, offered),
    )


def _leading(now: Change, bench: Change | None) -> Change:
    return now if now.block.passes or bench is None else bench
