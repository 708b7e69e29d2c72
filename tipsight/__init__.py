"""Which float tip, in which paint, can be kept in view, and what it costs in shot.

The public names are loaded when they are first asked for, so that the command starts at once.
"""

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from tipsight.advice.advise import advise, examine, sweep
    from tipsight.advice.answer import Answer
    from tipsight.errors import Mistakes, OutOfRange
    from tipsight.inputs.question import Question

__all__ = ["Answer", "Mistakes", "OutOfRange", "Question", "advise", "examine", "sweep"]

_HOMES = {
    "Answer": "tipsight.advice.answer",
    "Mistakes": "tipsight.errors",
    "OutOfRange": "tipsight.errors",
    "Question": "tipsight.inputs.question",
    "advise": "tipsight.advice.advise",
    "examine": "tipsight.advice.advise",
    "sweep": "tipsight.advice.advise",
}


def __getattr__(name: str) -> Any:
    if name not in _HOMES:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    from importlib import import_module

    return getattr(import_module(_HOMES[name]), name)


def __dir__() -> list[str]:
    return sorted({*globals(), *__all__})
