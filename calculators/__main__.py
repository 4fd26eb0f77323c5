"""`python -m calculators`: see `python -m calculators --help`."""

import sys

from calculators.kit.cli import main

sys.exit(main(sys.argv[1:]))
