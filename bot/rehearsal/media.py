"""Uploaded files: what the platform takes, and what it finds in them."""

import struct
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from bot.rehearsal.contract import RefusalError, bad_request
from bot.rehearsal.world import StoredFile, World

# Limits: the Bot API's pages on sendPhoto, sending files and getFile.
PHOTO_BYTES = 10 * 1024 * 1024
FILE_BYTES = 50 * 1024 * 1024
FETCH_BYTES = 20 * 1024 * 1024
PHOTO_SIDES = 10_000  # width and height together
PHOTO_RATIO = 20

PNG = b"\x89PNG\r\n\x1a\n"
JPEG = b"\xff\xd8"
JPEG_FRAMES = {*range(0xC0, 0xD0)} - {0xC4, 0xC8, 0xCC}


@dataclass(frozen=True, slots=True)
class Upload:
    """A file that came with a request."""

    name: str
    mime: str
    content: bytes


def sent_file(
    world: World, kind: str, args: Mapping[str, Any], files: Mapping[str, Upload]
) -> StoredFile:
    """The file that a call sends: uploaded with it, or known by its id.

    Raises:
        RefusalError: 400 for an empty, unknown or unfit file or an address, 413 if too large.
    """
    given = str(args.get(kind, ""))
    upload = files.get(given.removeprefix("attach://") if given else kind)
    if upload is None:
        known = world.files.get(given)
        if known is None:
            raise bad_request("wrong file identifier/HTTP URL specified")
        if known.kind != kind:
            raise bad_request(f"can't use file of type {known.kind.title()} as {kind.title()}")
        return known
    if not upload.content:
        raise bad_request("file must be non-empty")
    if len(upload.content) > (PHOTO_BYTES if kind == "photo" else FILE_BYTES):
        raise RefusalError(413, "Request Entity Too Large")
    return world.keep_file(
        kind, upload.name, upload.mime, upload.content, _facts(kind, args, upload)
    )


def _facts(kind: str, args: Mapping[str, Any], upload: Upload) -> dict[str, Any]:
    if kind == "photo":
        width, height = picture_size(upload.content)
        return {"width": width, "height": height}
    if kind == "document":
        return {}
    return {name: args.get(name, 0) for name in ("width", "height", "duration")}


def picture_size(content: bytes) -> tuple[int, int]:
    """Width and height in pixels of a PNG or JPEG.

    Raises:
        RefusalError: 400 if it is neither, or of sides that the platform does not take.
    """
    size = _png_size(content) or _jpeg_size(content)
    if size is None:
        raise bad_request("IMAGE_PROCESS_FAILED")
    if not min(size) or sum(size) > PHOTO_SIDES or max(size) > PHOTO_RATIO * min(size):
        raise bad_request("PHOTO_INVALID_DIMENSIONS")
    return size


def _png_size(content: bytes) -> tuple[int, int] | None:
    header = content[:24]
    if not header.startswith(PNG) or len(header) < 24:  # noqa: PLR2004 - signature, length, IHDR
        return None
    width, height = struct.unpack(">II", header[16:])
    return width, height


def _jpeg_size(content: bytes) -> tuple[int, int] | None:
    """From the first frame header: segments are FF, kind, length of two bytes, data."""
    if not content.startswith(JPEG):
        return None
    at = 2
    while at + 9 <= len(content) and content[at] == 0xFF:  # noqa: PLR2004 - a marker's first byte
        if content[at + 1] in JPEG_FRAMES:
            height, width = struct.unpack(">HH", content[at + 5 : at + 9])
            return width, height
        at += 2 + int.from_bytes(content[at + 2 : at + 4], "big")
    return None
