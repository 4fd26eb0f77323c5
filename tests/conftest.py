"""Every test run records what it asks of the calculators, for the replay in the shipped engine."""

from pathlib import Path

from hypothesis import settings

# a loaded machine is no defect: time is the benchmark's
settings.register_profile("here", deadline=None)
settings.load_profile("here")

# loaded before any test module is imported, so that what they import is what is recorded
pytest_plugins = ["tests.recorder"] if Path(__file__).with_name("recorder.py").is_file() else []
