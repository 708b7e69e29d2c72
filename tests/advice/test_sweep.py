"""Many questions, one after another, in threads or in processes; and a look at one tip alone."""

import multiprocessing
from collections.abc import Iterator
from concurrent.futures import Executor, Future, ProcessPoolExecutor, ThreadPoolExecutor

import pytest

from tipsight import tables
from tipsight.advice import advise as advising
from tipsight.advice import swim as swimming
from tipsight.advice.advise import advise, examine, sweep
from tipsight.errors import Mistakes
from tipsight.few import Few
from tipsight.inputs import demo
from tipsight.inputs.question import Question

SIMPLE = Question(distance="20 yd", behind=("dark",), pattern="quill avon", takes="6BB",
                  diameter="3 mm", stock="quill", showing="20 mm", paint="white")  # fmt: skip
SEVERAL = [SIMPLE.with_options(distance=f"{yards} yd") for yards in (12, 20, 28)]


@pytest.fixture(scope="module")
def processes() -> Iterator[Executor]:
    """One worker that begins with nothing of ours, as it does on every platform."""
    fresh = multiprocessing.get_context("spawn")
    with ProcessPoolExecutor(1, mp_context=fresh) as pool:
        yield pool


@pytest.fixture(scope="module")
def alone() -> list[dict]:
    return [advise(question).to_dict() for question in SEVERAL]


def test_without_an_executor_each_is_answered_when_it_is_asked_for(alone) -> None:
    answers = sweep(iter(SEVERAL))
    assert next(answers).to_dict() == alone[0]
    assert [one.to_dict() for one in answers] == alone[1:]


def test_threads_give_the_same(alone) -> None:
    with ThreadPoolExecutor(2) as pool:
        assert [one.to_dict() for one in sweep(SEVERAL, pool)] == alone


def test_processes_give_the_same(alone, processes) -> None:
    assert [one.to_dict() for one in sweep(iter(SEVERAL), processes)] == alone


def test_own_tables_reach_a_worker_and_do_not_stay_there(tmp_path, processes) -> None:
    """Six BB of half a gram are 3 g; of the table's 0.4 g they are 2.4 g."""
    own = "name,mass_g,group,source\nBB,0.5,shot,weighed\n"
    (tmp_path / "shot.csv").write_text(own, encoding="utf-8")
    with tables.using(tmp_path):
        mine = sweep([SIMPLE], processes)
    usual = sweep([SIMPLE], processes)
    assert next(mine).tip_in_hand.load.shot_g == pytest.approx(3.0)
    assert next(usual).tip_in_hand.load.shot_g == pytest.approx(2.4)
    assert advise(SIMPLE).tip_in_hand.load.shot_g == pytest.approx(2.4)


class Backwards(Executor):
    """Does its work at once; what it was given, it remembers."""

    def __init__(self) -> None:
        self.given: list[int] = []

    def submit(self, fn, /, *args, **kwargs):
        self.given.append(len(args[0]))
        done: Future = Future()
        done.set_result(fn(*args, **kwargs))
        return done


def test_any_executor_will_do_and_the_order_stays(monkeypatch) -> None:
    """Neighbours go together, so that what they share is worked out once."""
    monkeypatch.setattr(advising, "advise", lambda question: question.distance)
    asked = [Question(distance=f"{yards} yd") for yards in range(5, 45)]
    pool = Backwards()
    assert list(sweep(asked, pool)) == [one.distance for one in asked]
    assert pool.given == [16, 16, 8]
    assert list(sweep([], pool)) == []


@pytest.mark.parametrize("pool", [None, Backwards()], ids=["alone", "pool"])
def test_what_is_to_be_mended_is_raised(pool) -> None:
    with pytest.raises(Mistakes, match="say the unit"):
        list(sweep([SIMPLE, SIMPLE.with_options(distance="40")], pool))


@pytest.mark.parametrize("name", demo.names())
def test_a_look_at_the_tip_in_hand_is_the_answer_s(name: str) -> None:
    question = demo.question(name)
    block = examine(question)
    assert block == advise(question).tip_in_hand
    assert block.tip.stock.kind == advise(question).case.tip.stock.kind


def test_a_look_at_a_tip_with_mistakes_says_which() -> None:
    with pytest.raises(Mistakes, match="distance: '40' will not do"):
        examine(SIMPLE.with_options(distance="40"))


def test_rows_of_a_sweep_make_a_table(alone) -> None:
    rows = [one.row() for one in sweep(SEVERAL)]
    assert [row["range_m"] for row in rows] == pytest.approx([10.9728, 18.288, 25.6032])
    assert {tuple(row) for row in rows} == {tuple(rows[0])}
    levels = [row["tip_in_hand_level"] for row in rows]
    assert levels == [told["tip_in_hand"]["visibility"]["level"] for told in alone]
    assert levels == sorted(levels, reverse=True)


def test_what_is_kept_in_mind_alters_no_answer(monkeypatch) -> None:
    """One float in swims that differ in bites, water, paint, what is on the shelf or light alone."""
    told = ({}, {"bites": "bold"}, {"looks": "wavelets", "pace": "brisk"}, {"paint": "black"},
            {"tips": ("solid 2.5", "quill 4")}, {"behind": ("bright",), "distance": "35 yd"},
            {"temperature": "22 C"}, {"age": "70"}, {})  # fmt: skip
    asked = [SIMPLE.with_options(**one) for one in told]
    kept = [repr(advise(one).row()) for one in asked]
    assert len(set(kept)) > 5
    monkeypatch.setattr(swimming, "in_common", lambda case: ({}, {}, {}))
    assert [repr(advise(one).row()) for one in asked] == kept


def test_so_much_is_kept_in_mind_and_no_more() -> None:
    few = Few(2)
    for key, found in {1: "a", 2: "b", 3: "c"}.items():
        few[key] = found
    assert dict(few) == {3: "c"}
