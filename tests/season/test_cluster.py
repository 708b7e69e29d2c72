"""A sweep on dask's own workers: another process, reached over a socket, with tables of one's own."""

import pytest

from tipsight import tables
from tipsight.advice.advise import advise, sweep
from tipsight.inputs.question import Question

SIMPLE = Question(distance="14 yd", behind=("dark",), takes="6BB", paint="white", tips=("quill 3",),
                  paints=("white",))  # fmt: skip


@pytest.mark.filterwarnings("default")
def test_the_same_call_on_a_cluster(tmp_path) -> None:
    """Six BB of half a gram are 3 g; of the table's 0.4 g they are 2.4 g."""
    distributed = pytest.importorskip("distributed")
    own = "name,mass_g,group,source\nBB,0.5,shot,weighed\n"
    (tmp_path / "shot.csv").write_text(own, encoding="utf-8")
    cluster = distributed.LocalCluster(
        n_workers=1, threads_per_worker=1, processes=True, dashboard_address=None,
        local_directory=str(tmp_path / "dask"),
    )  # fmt: skip
    with cluster, distributed.Client(cluster) as client, client.get_executor() as pool:
        with tables.using(tmp_path):
            mine = list(sweep([SIMPLE], pool))
        usual = list(sweep([SIMPLE], pool))
    assert mine[0].tip_in_hand.load.shot_g == pytest.approx(3.0)
    assert usual[0].to_dict() == advise(SIMPLE).to_dict()
