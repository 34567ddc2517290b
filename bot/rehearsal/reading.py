"""Takes a request's arguments apart: address, form, multipart form or JSON."""

import json
from typing import Any

from starlette.datastructures import UploadFile
from starlette.requests import Request

from bot.rehearsal.contract import bad_request
from bot.rehearsal.media import Upload

FORMS = {"application/x-www-form-urlencoded", "multipart/form-data"}


async def arguments(request: Request) -> tuple[dict[str, object], dict[str, Upload]]:
    """Values and uploaded files of one call, as sent.

    Raises:
        RefusalError: 400 for a body that can't be read or a name that comes twice.
    """
    pairs: list[tuple[str, object]] = list(request.query_params.multi_items())
    files: dict[str, Upload] = {}
    kind = request.headers.get("content-type", "").partition(";")[0].strip().lower()
    if kind in FORMS:
        async with request.form() as form:
            for name, value in form.multi_items():
                if isinstance(value, UploadFile):
                    files[name] = Upload(
                        value.filename or name, value.content_type or "", await value.read()
                    )
                else:
                    pairs.append((name, value))
    elif kind == "application/json":
        pairs += _object(await request.body()).items()
    elif await request.body():
        raise bad_request("unsupported content type")
    names = [name for name, _ in pairs] + list(files)
    for name in names:
        if names.count(name) > 1:
            raise bad_request(f'field "{name}" is given twice')
    return dict(pairs), files


def _object(body: bytes) -> dict[str, Any]:
    try:
        value = json.loads(body)
    except (ValueError, RecursionError):
        raise bad_request("can't parse JSON") from None
    if not isinstance(value, dict):
        raise bad_request("a JSON object is expected")
    return value
