"""Lets ``python -m tipsight`` do what the command ``tipsight`` does."""

from tipsight.cli import main

if __name__ == "__main__":
    raise SystemExit(main())
