"""What must hold whatever fails: the database, the platform, the process, the clock, the order of things.

Sizes here fit the suite; the full ones are asked for by the environment, as `tests.reliability.sizes` lists.
"""
