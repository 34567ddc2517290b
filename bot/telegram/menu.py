"""The chat's menu of commands: one list a role, in the person's language."""

from __future__ import annotations

from telegram import Bot, BotCommand, BotCommandScopeChat

from bot.telegram.handlers import language as choice
from bot.telegram.handlers.dispatch import HANDLERS
from bot.words import label
from bot.words.commands import command_name
from scheduler.domain.messages import Message, text
from scheduler.domain.people import Role

AFTER = frozenset(
    {
        "notice",
        "welcome-clinician",
        "welcome-admin",
        "moved-over",
        "acting-as",
        "language-kept",
        "ready",
        "ready-waiting",
    }
)
"""Texts after which a chat's menu may be another one."""


async def show(bot: Bot, chat: int, role: Role, language: str) -> None:
    """Put the role's commands into one chat's menu. Raises the library's errors."""
    names: tuple[str, ...] = (*HANDLERS[role].COMMANDS, *choice.COMMANDS)
    commands = [
        BotCommand(command_name(name, language), label(text(f"command-{name}"), language))
        for name in names
    ]
    await bot.set_my_commands(commands, scope=BotCommandScopeChat(chat))


def changes(message: Message) -> bool:
    """Whether a message is one after which the menu is set anew."""
    return any(each.id in AFTER for each in message)
