"""The stand-in server with the chat library as its client, as its own tests have it."""

from tests.bot.rehearsal.conftest import clock, stand

__all__ = ["clock", "stand"]
