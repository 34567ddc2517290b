"""`python -m bot` is the command `boutwise`."""

import sys

from bot.cli import main

sys.exit(main())
