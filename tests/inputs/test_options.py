"""Options written so that they can be typed."""

import pytest

from tipsight.errors import Mistakes
from tipsight.inputs.options import as_arguments


def test_an_unknown_item_cannot_be_written():
    with pytest.raises(
        Mistakes, match=r"^distnce: there is no such item; did you mean 'distance'"
    ):
        as_arguments({"distnce": "40 yd"})
