"""Which texts the program says, with which arguments: read from its source, not from its catalogue."""

import ast
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from pathlib import Path

from bot import dialogue
from bot.telegram.handlers import language
from bot.telegram.handlers.dispatch import HANDLERS
from scheduler.domain import breaks, pain, planjson, readiness
from scheduler.domain.flags import OUTCOMES
from scheduler.domain.hours import Hours, Span
from scheduler.domain.people import Role
from scheduler.domain.plan import Level, Plan
from scheduler.usecases import verdicts
from scheduler.usecases.drafts import FIELDS
from scheduler.usecases.holds import STOP_TEXTS

PLAN = Plan(
    "stomp", 40, 10, 10, 2, 3, (0, 3), 1, Hours(Span(480, 1200)), (), date(2027, 3, 8), None, None
)
ROOT = Path(__file__).parents[2]
SAYS = frozenset({"text", "reply", "message", "catalogue"})
"""The functions whose first argument is an id."""
PASSES_ON = {"as_it_stands": 1, "what_next": 2, "carry_on": 3}
"""Helpers that are handed an id, and at which place."""
VARIABLES: dict[str, Sequence[str]] = {
    "said": (),
    "id_": (),
    "fault.reason": (),
    "ids[value]": (),
    "fault": tuple(
        f"setting-bad-{name}"
        for name in (
            *("number", "zone", "window", "work-hours", "week-start", "work-days"),
            *("files-in-chat", "erase-left"),
        )
    ),
    "STOP_TEXTS[urgency]": tuple(STOP_TEXTS.values()),
}
"""What stands for an id in a call; nothing where the ids are found at the caller."""
_dashed = [field.replace("_", "-") for field in FIELDS]
_fall_steps = [step.replace("_", "-") for step in pain.FALL_STEPS]
_join_steps = [
    *(f"screen-{screen}" for screen in readiness.ORDER),
    *("usual-pain", "times-zone", "times-window", "times-quiet"),
]
_commands = sorted({name for module in (*HANDLERS.values(), language) for name in module.COMMANDS})
FAMILIES: dict[str, list[str]] = {
    "ask-pain-{step}": [f"ask-pain-{step}" for step in pain.STEPS],
    "ask-pain-{question.step}": [f"ask-pain-{step}" for step in pain.STEPS],
    "ask-fall-{step.replace('_', '-')}": [f"ask-fall-{step}" for step in _fall_steps],
    "ask-{question.kind}-{step}": [
        *(f"ask-pain-{step}" for step in pain.STEPS),
        *(f"ask-fall-{step}" for step in _fall_steps),
    ],
    "data-{kind}": ["data-json", "data-csv", "data-fhir"],
    "ask-{step}": [f"ask-{step}" for step in _join_steps],
    "ask-times-{field}": [f"ask-times-{field}" for field in ("zone", "window", "quiet")],
    "ask-plan-{field.replace('_', '-')}": [f"ask-plan-{field}" for field in _dashed],
    "welcome-{person.role.value}": ["welcome-clinician", "welcome-admin"],
    "fault-{fault.reason}": [],  # see `fault_reasons`
    "button-{label}": [],  # its callers are found
    "command-{name}": [f"command-{name}" for name in _commands],
    "button-sign-{sign}": [f"button-sign-{sign}" for sign in (*pain.SIGN_SCREEN, *pain.FALL_SIGNS)],
    "button-place-{place}": [f"button-place-{place}" for place in pain.PLACES],
    "button-when-{when}": [f"button-when-{when}" for when in dialogue.PAIN_VALUES["when"]],
    "button-fall-{w}": [f"button-fall-{when}" for when in dialogue.FALL_VALUES["when"]],
    "button-doing-{d}": [f"button-doing-{doing}" for doing in pain.FALL_DOING],
    "button-ready-{key}": [f"button-ready-{key}" for key in readiness.KEYS],
    "button-outcome-{o}": [f"button-outcome-{outcome}" for outcome in OUTCOMES],
    "button-verdict-{choice}": [f"button-verdict-{choice}" for choice in verdicts.CHOICES],
    "button-ceiling-{name}": [f"button-ceiling-{level.name.lower()}" for level in Level],
    "button-field-{name.replace('_', '-')}": [f"button-field-{field}" for field in _dashed],
    "button-away-{reason}": [f"button-away-{reason}" for reason in breaks.REASONS],
    "button-away-{why}": [f"button-away-{reason}" for reason in breaks.REASONS],
    "button-break-{length}": [f"button-break-{length}" for length in breaks.LENGTHS],
    "button-break-{key}": [f"button-break-{length}" for length in breaks.LENGTHS],
    "button-role-{role.value}": [f"button-role-{role.value}" for role in Role],
    "button-role-{role}": [f"button-role-{role.value}" for role in Role],
}
"""Ids that are built, and all that they can become."""
DRAWN = frozenset({"digest", "line", "picture"})
"""Arguments that become a picture or a file: the caption says some facts of them instead."""
NOT_SHOWN = {"hours", "weekday_hours", "companions"}
SPREAD = {
    "amount": ("reps", "total", "movement", "per_side"),
    "hours_args": ("window", "quiet"),
    "_practice_facts": ("practice", "phone", "emergency_number", "clinician"),
    "_card_args": (
        *(field for field in planjson.as_json(PLAN) if field not in NOT_SHOWN),
        *("beside", "client", "name", "per_side", "window", "quiet"),
    ),
}
"""What a call's `**helper(...)` adds to its arguments."""


class UnknownIdError(Exception):
    """An id that is built in a way this scan does not know: add it to its tables."""


def said() -> dict[str, set[str]]:
    """Every id in the source, with the arguments that any place gives it as far as can be read.

    "*" stands for those that cannot be read: they come from a value that is worked out.
    """
    trees = {path: ast.parse(path.read_text(encoding="utf-8")) for path in _sources()}
    helpers = {
        function.name: _helper_arguments(function)
        for tree in trees.values()
        for function in ast.walk(tree)
        if isinstance(function, ast.FunctionDef)
    }
    found: dict[str, set[str]] = defaultdict(set)
    for path, tree in trees.items():
        dicts = _dicts(tree)
        for call in ast.walk(tree):
            if isinstance(call, ast.Call):
                name = getattr(call.func, "id", "")
                given = helpers[name] if name in PASSES_ON else _arguments(call, dicts)
                for id_ in _ids(call, path):
                    found[id_] |= given - DRAWN
    for reason in fault_reasons():
        found[f"fault-{reason}"] |= {"field", "values", "*"}
    return found


def _helper_arguments(function: ast.FunctionDef) -> set[str]:
    """What a helper that is handed an id gives the text that it says with it."""
    return {
        argument
        for call in ast.walk(function)
        if isinstance(call, ast.Call)
        and getattr(call.func, "id", "") in SAYS
        and isinstance(call.args[0], ast.Name)
        for argument in _arguments(call, {})
    }


def _dicts(tree: ast.Module) -> dict[str, set[str]]:
    """Keys of the dicts written out in a module, by the variable's name."""
    found: dict[str, set[str]] = {}
    for node in ast.walk(tree):
        match node:
            case ast.AnnAssign(target=ast.Name(id=name), value=ast.Dict(keys=keys)):
                found[name] = {_key(k) for k in keys}
            case ast.Assign(targets=[ast.Name(id=name)], value=ast.Dict(keys=keys)):
                found[name] = {_key(k) for k in keys}
    return found


def _sources() -> Iterator[Path]:
    for folder in ("bot", "scheduler"):
        for path in sorted((ROOT / folder).rglob("*.py")):
            if not {"words", "rehearsal"} & {*path.parts}:
                yield path


def _ids(call: ast.Call, path: Path) -> list[str]:
    name = getattr(call.func, "id", "")
    if name == "Unclear" and call.args:
        return list(_constants(call.args[0]))
    if name in PASSES_ON and len(call.args) > PASSES_ON[name]:
        return list(_constants(call.args[PASSES_ON[name]]))
    if name not in SAYS | {"button"} or not call.args:
        return []
    return [*_of(call.args[0], path, name)]


def _of(first: ast.expr, path: Path, name: str) -> Iterator[str]:
    match first:
        case ast.Constant(value=str() as value):
            yield f"button-{value}" if name == "button" else value
        case ast.IfExp():
            yield from _of(first.body, path, name)
            yield from _of(first.orelse, path, name)
        case ast.JoinedStr():
            template = ast.unparse(first)[2:-1]
            yield from _built(f"button-{template}" if name == "button" else template, path)
        case _:
            shown = ast.unparse(first)
            if shown not in VARIABLES:
                raise UnknownIdError(f"{path.name}:{first.lineno} {shown}")
            yield from VARIABLES[shown]


def _built(template: str, path: Path) -> Iterator[str]:
    """All ids that an f-string can become."""
    if template not in FAMILIES:
        raise UnknownIdError(f"{path.name}: {template}")
    yield from FAMILIES[template]


def fault_reasons() -> set[str]:
    """Every reason that the check of a plan gives, from its source."""
    tree = ast.parse((ROOT / "scheduler/domain/plan.py").read_text(encoding="utf-8"))
    return {
        str(call.args[1].value)
        for call in ast.walk(tree)
        if isinstance(call, ast.Call)
        and getattr(call.func, "id", "") == "Fault"
        and isinstance(call.args[1], ast.Constant)
    }


def _constants(node: ast.expr) -> Iterator[str]:
    for each in ast.walk(node):
        if isinstance(each, ast.Constant) and isinstance(each.value, str):
            yield each.value


def _arguments(call: ast.Call, dicts: Mapping[str, set[str]]) -> set[str]:
    if getattr(call.func, "id", "") == "Unclear":
        return {key for each in call.args[1:] for key in _keys(each)}
    found: set[str] = set()
    for keyword in call.keywords:
        if keyword.arg is not None:
            found.add(keyword.arg)
        elif isinstance(keyword.value, ast.Call):
            found |= {*SPREAD.get(getattr(keyword.value.func, "id", ""), ("*",))}
        else:
            found |= dicts.get(getattr(keyword.value, "id", ""), {"*"})
    return found


def _key(node: ast.expr | None) -> str:
    return str(node.value) if isinstance(node, ast.Constant) else "*"


def _keys(node: ast.expr) -> Iterator[str]:
    if isinstance(node, ast.Dict):
        yield from (str(key.value) for key in node.keys if isinstance(key, ast.Constant))
