"""`python -m bot.words > bot/text/ids.md`: the list of ids with their arguments, anew."""

import sys

from bot.words.ids import table

if __name__ == "__main__":
    sys.stdout.write(table())
