"""No test reads or writes the box of the person who runs it."""

import os

import pytest


@pytest.fixture(scope="session", autouse=True)
def no_box_of_ones_own(tmp_path_factory):
    os.environ["TIPSIGHT_BOX"] = str(tmp_path_factory.mktemp("nowhere") / "no.box")
