"""The page: the same answer by tapping."""

from webui.app import create_app

__all__ = ["create_app"]
