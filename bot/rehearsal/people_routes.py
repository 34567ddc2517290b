"""People's side over HTTP: who there is, what they see, what they do. Answers are JSON."""

import base64
import binascii
import json
from collections.abc import Awaitable, Callable
from datetime import UTC, datetime
from typing import Any

from starlette.requests import Request
from starlette.responses import JSONResponse, Response
from starlette.routing import Route

from bot.rehearsal import people
from bot.rehearsal.faults import fault_from
from bot.rehearsal.keyboards import rows_of
from bot.rehearsal.people import Deed, MisuseError
from bot.rehearsal.world import Message, Person, World

Handler = Callable[[Request], Awaitable[Response]]
PICTURE_TYPES = {"image/png", "image/jpeg"}
REQUIRED = object()


class PeopleApi:
    """The routes under /people, /faults and /updates."""

    def __init__(self, world: World) -> None:
        self._world = world
        deeds = {
            "text": self._text,
            "press": self._press,
            "file": self._file,
            "block": self._block,
            "contact": self._contact,
            "location": self._location,
            "forward": self._forward,
            "group": self._group,
        }
        self.routes = [
            Route("/people", self.all, methods=["GET"]),
            Route("/people", self.add, methods=["POST"]),
            Route("/people/{id:int}/chat", self.chat, methods=["GET"]),
            Route("/people/{id:int}/notices", self.notices, methods=["GET"]),
            Route("/people/{id:int}/files/{file_id}", self.file, methods=["GET"]),
            *(
                Route(f"/people/{{id:int}}/{name}", _deed(do), methods=["POST"])
                for name, do in deeds.items()
            ),
            Route("/updates/repeat", _deed(self._repeat), methods=["POST"]),
            Route("/faults", self.faults, methods=["GET", "POST", "DELETE"]),
            Route("/faults/release", self.release, methods=["POST"]),
        ]

    async def all(self, request: Request) -> Response:  # noqa: ARG002
        """Everybody, in the order they came."""
        return JSONResponse([_person(each) for each in self._world.people.values()])

    async def add(self, request: Request) -> Response:
        """A new person: {"name", "language"?, "label"?}."""
        body = await _body(request)
        language = _take(body, "language", str, "en")
        person_id = self._world.add_person(
            _take(body, "name", str), language, label=_take(body, "label", str, "")
        )
        return JSONResponse(_person(self._world.people[person_id]), status_code=201)

    async def chat(self, request: Request) -> Response:
        """What the person sees, oldest first; deleted messages are marked, not left out."""
        person = people.person_of(self._world, request.path_params["id"])
        return JSONResponse([_message(each) for each in self._world.chats[person.id].messages])

    async def notices(self, request: Request) -> Response:
        """What popped up in answer to presses, oldest first; unanswered presses too."""
        person = people.person_of(self._world, request.path_params["id"])
        return JSONResponse(
            [
                {
                    "message_id": each.message_id,
                    "date": iso(each.at),
                    "answered": each.answered,
                    "text": each.answer,
                    "alert": each.alert,
                }
                for each in self._world.presses.values()
                if each.person is person
            ]
        )

    async def file(self, request: Request) -> Response:
        """A file of the person's chat, as the person would open it."""
        person = people.person_of(self._world, request.path_params["id"])
        file_id = request.path_params["file_id"]
        files = [each.file for each in self._world.chats[person.id].messages if each.file]
        for file in files:
            if file.file_id == file_id:
                shown = file.mime if file.mime in PICTURE_TYPES else "application/octet-stream"
                return Response(file.content, media_type=shown)
        raise MisuseError(404, "there is no such file in this chat")

    async def faults(self, request: Request) -> Response:
        """GET lists the faults given, POST adds one, DELETE takes all out of force."""
        if request.method == "POST":
            try:
                self._world.faults.add(fault_from(await _body(request)))
            except ValueError as fault:
                raise MisuseError(400, str(fault)) from None
        elif request.method == "DELETE":
            self._world.faults.clear()
        return JSONResponse([each.as_json() for each in self._world.faults.known])

    async def release(self, request: Request) -> Response:  # noqa: ARG002
        """Let go of all calls that a fault holds."""
        self._world.faults.release()
        return JSONResponse({})

    def _text(self, person_id: int, body: dict[str, Any]) -> Deed:
        text = _take(body, "text", str)
        if "edit" in body:
            wanted = _take(body, "edit", int | bool)
            return people.edit(self._world, person_id, None if wanted is True else wanted, text)
        reply_to = _take(body, "reply_to", int | None, None)
        return people.say(self._world, person_id, text, reply_to=reply_to)[-1]

    def _press(self, person_id: int, body: dict[str, Any]) -> Deed:
        message_id = _take(body, "message_id", int)
        if "forged" in body:
            return people.forge(self._world, person_id, message_id, _take(body, "forged", str))
        return people.press(self._world, person_id, message_id, _take(body, "button", str))

    def _file(self, person_id: int, body: dict[str, Any]) -> Deed:
        content: bytes | None = None
        if "text" in body:
            content = _take(body, "text", str).encode()
        elif "base64" in body:
            content = _decoded(_take(body, "base64", str))
        kind, name = _take(body, "kind", str), _take(body, "name", str)
        caption = _take(body, "caption", str, "")
        return people.send_file(
            self._world, person_id, kind, name, content=content, caption=caption
        )

    def _block(self, person_id: int, body: dict[str, Any]) -> Deed:
        return people.block(self._world, person_id, on=_take(body, "on", bool))

    def _contact(self, person_id: int, body: dict[str, Any]) -> Deed:
        return people.share_contact(self._world, person_id, _take(body, "phone", str))

    def _location(self, person_id: int, body: dict[str, Any]) -> Deed:
        latitude = _take(body, "latitude", int | float)
        longitude = _take(body, "longitude", int | float)
        return people.share_location(self._world, person_id, latitude, longitude)

    def _forward(self, person_id: int, body: dict[str, Any]) -> Deed:
        text, author = _take(body, "text", str), _take(body, "author", str, "Somebody Else")
        return people.forward(self._world, person_id, text, author)

    def _group(self, person_id: int, body: dict[str, Any]) -> Deed:
        text, title = _take(body, "text", str), _take(body, "title", str, "Invented group")
        kind = _take(body, "kind", str, "group")
        if kind not in {"group", "supergroup", "channel"}:
            raise MisuseError(400, "kind must be group, supergroup or channel")
        return people.say_in_group(self._world, person_id, text, title, kind)

    def _repeat(self, person_id: int, body: dict[str, Any]) -> Deed:  # noqa: ARG002
        return people.repeat(self._world, _take(body, "update_id", int))


async def misuse(request: Request, fault: Exception) -> Response:  # noqa: ARG001
    """The answer to a `MisuseError`: its status and one clear line."""
    status = fault.status if isinstance(fault, MisuseError) else 500
    return JSONResponse({"error": str(fault)}, status_code=status)


def iso(instant: datetime) -> str:
    """An instant in UTC, like 2027-03-08T05:00:00Z."""
    return instant.astimezone(UTC).isoformat().replace("+00:00", "Z")


def _deed(do: Callable[[int, dict[str, Any]], Deed]) -> Handler:
    async def handle(request: Request) -> Response:
        deed = do(request.path_params.get("id", 0), await _body(request))
        return JSONResponse({"update_id": deed.update_id, "message_id": deed.message_id})

    return handle


async def _body(request: Request) -> dict[str, Any]:
    try:
        body = json.loads(await request.body())
        json.dumps(body, ensure_ascii=False).encode()
    except (ValueError, RecursionError):
        raise MisuseError(400, "the body must be JSON in UTF-8") from None
    if not isinstance(body, dict):
        raise MisuseError(400, "the body must be a JSON object")
    return body


def _take(body: dict[str, Any], name: str, kind: Any, default: Any = REQUIRED) -> Any:
    value = body.get(name, default)
    if value is REQUIRED:
        raise MisuseError(400, f'"{name}" is missing')
    wrong_bool = isinstance(value, bool) and kind is not bool and kind != int | bool
    if not isinstance(value, kind) or wrong_bool:
        raise MisuseError(400, f'"{name}" has the wrong type')
    return value


def _decoded(text: str) -> bytes:
    try:
        return base64.b64decode(text, validate=True)
    except binascii.Error:
        raise MisuseError(400, '"base64" can\'t be decoded') from None


def _person(it: Person) -> dict[str, Any]:
    return {
        "id": it.id,
        "name": it.name,
        "label": it.label,
        "language": it.language,
        "started": it.started,
        "blocked": it.blocked,
    }


def _message(it: Message) -> dict[str, Any]:
    rows = [] if it.deleted else rows_of(it.markup)
    file = it.file
    return {
        "message_id": it.message_id,
        "from": "bot" if it.sender is None else "person",
        "date": iso(it.at),
        "text": it.text,
        "html": it.raw,
        "buttons": [[{"label": each.label, "data": each.data} for each in row] for row in rows],
        "reply_to": it.reply_to,
        "silent": it.silent,
        "edited": it.edited_at is not None,
        "deleted": it.deleted,
        "files": [] if file is None else [
            {"kind": file.kind, "name": file.name, "file_id": file.file_id, "mime": file.mime}
        ],
    }  # fmt: skip
