"""How the float rides with one tip, and what it tells of a bite."""

import numpy as np

from tipsight.advice.answer import Handling
from tipsight.advice.swim import Swim
from tipsight.afloat import bite, lean, ride
from tipsight.inputs.case import Tip
from tipsight.load import budget
from tipsight.sight import dip
