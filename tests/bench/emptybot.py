"""The library's default bot: one handler that says what was said. Its address comes as an argument."""

import sys
from typing import Any

from telegram import Update
from telegram.ext import ApplicationBuilder, MessageHandler, filters

from tests.bench.chatserver import TOKEN


async def echo(update: Update, _: Any) -> None:
    if update.message is not None:
        await update.message.reply_text(update.message.text or "")


def main(root: str) -> None:
    application = ApplicationBuilder().token(TOKEN).base_url(f"{root}/bot").build()
    application.add_handler(MessageHandler(filters.TEXT, echo))
    application.run_polling()


if __name__ == "__main__":
    main(sys.argv[1])
