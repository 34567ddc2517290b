"""Measures how fast the bot is, against something else that does the same in the same run.

`python -m tests.bench [NAME...] [--json] [--small]`. The figures and their goals are described beside
what measures them; a name is a figure's number, or its number and more: `B1` or "B1 postgresql".
"""
