"""Every test run records what it asks of the calculators, for the replay in the shipped engine."""

# before any test module is imported, so that what they import is what is recorded
pytest_plugins = ["tests.recorder"]
