"""`python -m windwall` is the command `windwall`."""

import sys

from windwall.cli.main import main

if __name__ == "__main__":
    sys.exit(main())
