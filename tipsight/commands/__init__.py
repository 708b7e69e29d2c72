"""The commands, one module each: ``add_options(parser)``, and ``run(given)`` for what to print."""
