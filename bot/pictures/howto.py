"""How an exercise is done, as a picture: two or three stages of a plain figure, numbered as the cues are.

Our own drawings. There is no word in them, so that they serve every language; all that they show is also
said in the words below (C7). Dark on white, and nothing hangs on a colour.
"""

from __future__ import annotations

import io
from collections.abc import Callable, Mapping
from functools import cache

from bot.pictures.canvas import tinted
from bot.pictures.figure import FLOOR, STAGE, Paper, Pose

UNIT = 3.6
"""Pixels of a unit: three stages are 1080 wide, which a phone shows at about a third."""
LOW = 56.0
"""Units at the top that pictures of exercises on the floor do without."""
Stage = Callable[[Paper], None]


def draw(exercise: str) -> bytes:
    """The picture of an exercise as a PNG; KeyError for one that has none."""
    return _drawn(exercise)


@cache
def _drawn(exercise: str) -> bytes:
    stages = STAGES[exercise]
    paper = Paper(len(stages), UNIT)
    for number, stage in enumerate(stages):
        paper.left = number * STAGE
        stage(paper)
        paper.floor()
        paper.number(number + 1)
    out = io.BytesIO()
    tinted(paper.finished(LOW if exercise in ON_THE_FLOOR else 0)).save(out, "PNG", optimize=True)
    return out.getvalue()


# --- poses ---------------------------------------------------------------------------------------
# Seen from the side she looks to the right, where the counter is; from the front she looks at us.

TOP = 72.0
"""Height of the counter: a little below her elbows."""
ARM = ((42.0, 46.0), (50.0, 62.0), (66.0, 70.0))
TRUNK = ((42.0, 38.0), (42.0, 84.0))


def _side(leg: tuple[tuple[float, float], ...], *more: tuple[tuple[float, float], ...]) -> Pose:
    return Pose((43.0, 24.0), (TRUNK, ARM, leg, *more))


FLAT = ((42.0, 84.0), (43.0, 108.0), (41.0, 131.0), (39.0, FLOOR), (54.0, FLOOR))
STANDING = _side(FLAT)
ON_TOES = Pose(
    (43.0, 13.0),
    (
        ((42.0, 27.0), (42.0, 73.0)),
        ((42.0, 35.0), (51.0, 53.0), (66.0, 70.0)),
        ((42.0, 73.0), (43.0, 97.0), (41.0, 119.0), (40.0, 123.0), (53.0, FLOOR)),
    ),
)
KNEE_UP = Pose(
    STANDING.head,
    (TRUNK, ARM, ((42.0, 84.0), (62.0, 88.0), (58.0, 110.0), (70.0, 112.0))),
    (FLAT,),
)
OTHER_KNEE_UP = Pose(
    STANDING.head,
    (TRUNK, ARM, FLAT),
    (((42.0, 84.0), (62.0, 88.0), (58.0, 110.0), (70.0, 112.0)),),
)
FOOT_UP = Pose(
    STANDING.head,
    (TRUNK, ARM, ((42.0, 84.0), (56.0, 98.0), (46.0, 117.0), (44.0, 121.0), (59.0, 121.0))),
    (FLAT,),
)
BENT = Pose(
    (46.0, 33.0),
    (
        ((44.0, 47.0), (38.0, 91.0)),
        ((44.0, 55.0), (52.0, 68.0), (66.0, 70.0)),
        ((38.0, 91.0), (52.0, 108.0), (41.0, 131.0), (39.0, FLOOR), (54.0, FLOOR)),
    ),
)
IN_THE_AIR = Pose(
    (43.0, 14.0),
    (
        ((42.0, 28.0), (42.0, 74.0)),
        ((42.0, 36.0), (51.0, 54.0), (66.0, 70.0)),
        ((42.0, 74.0), (44.0, 98.0), (40.0, 119.0), (39.0, 122.0), (50.0, 128.0)),
    ),
)
FREE_LEG = ((42.0, 84.0), (49.0, 106.0), (27.0, 116.0), (24.0, 126.0))
ONE_LEG = Pose(STANDING.head, (TRUNK, ARM, FLAT), (FREE_LEG,))
ONE_LEG_BENT = Pose(
    BENT.head, BENT.near, (((38.0, 91.0), (50.0, 110.0), (26.0, 114.0), (23.0, 124.0)),)
)
ONE_LEG_UP = Pose(
    IN_THE_AIR.head,
    IN_THE_AIR.near,
    (((42.0, 74.0), (48.0, 96.0), (26.0, 104.0), (23.0, 114.0)),),
)


def _front(feet: float, *, arms_up: bool, lift: float = 0.0, right: float | None = None) -> Pose:
    """From the front, the feet so far to each side; `right` places the right foot by itself."""
    far = feet if right is None else right
    legs = tuple(
        ((50.0, 84.0), (50.0 + x * 0.62 + side * 2, 110.0), (50.0 + x, 132.0), (50.0 + x + side * 7, FLOOR))
        for side, x in ((-1, -feet), (1, far))
    )  # fmt: skip
    hand = (34.0, 12.0) if arms_up else (19.0, 86.0)
    elbow = (25.0, 30.0) if arms_up else (16.0, 66.0)
    arms = tuple(
        ((50.0, 44.0), (50.0 + side * elbow[0], elbow[1]), (50.0 + side * hand[0], hand[1]))
        for side in (-1, 1)
    )
    return Pose((50.0, 22.0), (((50.0, 36.0), (50.0, 84.0)), *legs, *arms)).moved(0, -lift)


TOGETHER = _front(6, arms_up=False)
STEPPED = _front(6, arms_up=True, right=30)
APART = _front(26, arms_up=True)

LYING = Pose(
    (13.0, 121.0),
    (((23.0, 122.0), (60.0, 121.0)), ((60.0, 121.0), (80.0, 129.0), (95.0, 133.0)),
     ((28.0, 121.0), (42.0, 116.5), (58.0, 117.0))),
)  # fmt: skip
CHEST_UP = Pose(
    (14.0, 103.0),
    (((23.0, 108.0), (42.0, 118.0), (60.0, 121.0)), ((60.0, 121.0), (80.0, 129.0), (95.0, 133.0)),
     ((28.0, 111.0), (44.0, 112.5), (59.0, 115.0))),
)  # fmt: skip
ALL_FOURS = Pose(
    (15.0, 86.0),
    (((27.0, 90.0), (72.0, 90.0)), ((29.0, 90.0), (29.0, 112.0), (28.0, FLOOR)),
     ((72.0, 90.0), (71.0, FLOOR - 2), (91.0, FLOOR))),
)  # fmt: skip
HOVER = Pose(
    (15.0, 82.0),
    (((27.0, 86.0), (72.0, 86.0)), ((29.0, 86.0), (29.0, 112.0), (28.0, FLOOR)),
     ((72.0, 86.0), (70.0, 125.0), (88.0, 125.0), (92.0, FLOOR))),
)  # fmt: skip


# --- stages --------------------------------------------------------------------------------------


def _held(pose: Pose, *arrows: tuple[tuple[float, float], ...], thud: float | None = None) -> Stage:
    """A stage at the counter."""

    def stage(paper: Paper) -> None:
        paper.counter(66, TOP)
        paper.person(pose)
        _marks(paper, arrows, thud)

    return stage


def _alone(pose: Pose, *arrows: tuple[tuple[float, float], ...], pillow: bool = False) -> Stage:
    """A stage without anything to hold."""

    def stage(paper: Paper) -> None:
        if pillow:
            paper.pillow(42, 68, 125)
        paper.person(pose)
        _marks(paper, arrows, None)

    return stage


def _marks(
    paper: Paper, arrows: tuple[tuple[tuple[float, float], ...], ...], thud: float | None
) -> None:
    for each in arrows:
        paper.arrow(each)
    if thud is not None:
        paper.thud(thud)


UP = ((12.0, 112.0), (12.0, 76.0))
DOWN = ((12.0, 76.0), (12.0, 112.0))
ARMS_UP = ((9.0, 74.0), (9.0, 44.0))
ARMS_DOWN = ((9.0, 34.0), (9.0, 64.0))
OUT, OUT_LEFT = ((71.0, 96.0), (93.0, 96.0)), ((29.0, 96.0), (7.0, 96.0))
IN, IN_LEFT = ((93.0, 120.0), (71.0, 120.0)), ((7.0, 120.0), (29.0, 120.0))
CHEST, CHEST_DOWN = ((32.0, 98.0), (32.0, 72.0)), ((32.0, 82.0), (32.0, 108.0))
KNEES, KNEES_DOWN = ((50.0, 128.0), (50.0, 100.0)), ((50.0, 100.0), (50.0, 128.0))
STAGES: Mapping[str, tuple[Stage, ...]] = {
    "marching": (_held(STANDING), _held(KNEE_UP, UP), _held(OTHER_KNEE_UP, UP)),
    "stepping-jack": (
        _alone(TOGETHER), _alone(STEPPED, OUT, ARMS_UP), _alone(TOGETHER, IN, ARMS_DOWN),
    ),
    "gentle-heel-drop": (_held(STANDING), _held(ON_TOES, UP), _held(STANDING, DOWN)),
    "stomp": (_held(STANDING), _held(FOOT_UP, UP), _held(STANDING, DOWN, thud=46)),
    "small-jump": (_held(BENT), _held(IN_THE_AIR, UP), _held(BENT, DOWN)),
    "hop": (_held(ONE_LEG_BENT), _held(ONE_LEG_UP, UP), _held(ONE_LEG_BENT, DOWN)),
    "jumping-jack": (
        _alone(TOGETHER), _alone(APART, OUT, OUT_LEFT), _alone(TOGETHER, IN, IN_LEFT),
    ),
    "firm-heel-drop": (_held(STANDING), _held(ON_TOES, UP), _held(STANDING, DOWN, thud=46)),
    "back-raise": (
        _alone(LYING, pillow=True), _alone(CHEST_UP, CHEST, pillow=True),
        _alone(LYING, CHEST_DOWN, pillow=True),
    ),
    "hover-hold": (_alone(ALL_FOURS), _alone(HOVER, KNEES), _alone(ALL_FOURS, KNEES_DOWN)),
}  # fmt: skip
"""The stages of each exercise, by its key."""
ON_THE_FLOOR = frozenset({"back-raise", "hover-hold"})
"""Nobody stands in these: the empty upper part is cut off."""
