"""Keys for what rests encrypted: names, phones, notes and free text (rule D4).

`BOUTWISE_KEY` is `none`, or one or more keys. The first seals; all of them open. To rotate, put the
new key in front and keep the old one for as long as rows under it exist.

Sealed text is AES-256-GCM with a random 96-bit nonce (NIST SP 800-38D allows 2**32 messages a key
that way). It names the key that sealed it, so that a missing key is told from a damaged row.

What must be found again (a user id, a practice's own reference) is stored as an HMAC-SHA256. Its
secret is not one of the keys: it is made once per database and rests there, sealed (see
`storage.vault`). So a rotation changes no lookup, and a unique column of lookups stays unique.
"""

import hmac
import json
import secrets
from base64 import urlsafe_b64decode, urlsafe_b64encode
from binascii import Error as NotBase64
from typing import Any, Self

from cryptography.exceptions import InvalidTag
from cryptography.hazmat.primitives.ciphers.aead import AESGCM
from cryptography.hazmat.primitives.hashes import SHA256
from cryptography.hazmat.primitives.kdf.hkdf import HKDF

KEY_BYTES = 32
NONCE_BYTES = 12
PLAIN = "plain"
SEALED = "aesgcm"
MAKE_ONE = "make one with `boutwise key`"

_encode = json.JSONEncoder(ensure_ascii=False, separators=(",", ":"), allow_nan=False).encode


class WrongKeyError(Exception):
    """Sealed with a key that is not among ours. `key_name` says which; it is no secret."""

    def __init__(self, key_name: str) -> None:
        super().__init__(
            f"The data were sealed with the key {key_name}, which is not among those given."
        )
        self.key_name = key_name


class DamagedError(Exception):
    """The stored value is not what was written: a flipped bit, a cut row, a foreign hand."""


def new_key() -> str:
    """A new random key, 43 letters, digits, `-` and `_`, as `BOUTWISE_KEY` takes it."""
    return _to_text(secrets.token_bytes(KEY_BYTES))


class Keyring:
    """Seals and opens JSON values, and turns what must be found again into lookups.

    Safe to use from several threads at once.
    """

    def __init__(self, keys: tuple[bytes, ...]) -> None:
        """`keys`: 32 bytes each, the one that seals first; none at all leaves values readable."""
        self._boxes = {_name(key): AESGCM(_derive(key, "seal")) for key in keys}
        self._newest = next(iter(self._boxes), None)
        self._lookup_secret: bytes | None = None

    @classmethod
    def parse(cls, text: str) -> Self:
        """Reads `none`, or keys with commas between them.

        Raises ValueError with one sentence, which never repeats the text: it is a secret.
        """
        words = [word.strip() for word in text.split(",")]
        if words == ["none"]:
            return cls(())
        if not all(words):
            raise ValueError(f"A key is missing: {MAKE_ONE}, or say none.")
        if "none" in words:
            raise ValueError("The word none stands alone, or is left out.")
        keys = tuple(_read_key(word, number) for number, word in enumerate(words, start=1))
        if len(set(keys)) < len(keys):
            raise ValueError("The same key is given twice.")
        return cls(keys)

    @property
    def encrypts(self) -> bool:
        """Whether new values are encrypted; False with `none`."""
        return self._newest is not None

    def seal(self, value: Any) -> str:
        """Text for a database column, from any JSON value.

        NUL and half surrogates are mended (see `clean`), which PostgreSQL could not store.
        Raises ValueError for NaN and infinities and TypeError for what JSON does not know.
        """
        text = _encode(value)
        if "\\u0000" in text or not _encodable(text):
            text = _encode(_clean_all(value))
        if self._newest is None:
            return f"{PLAIN}:{text}"
        nonce = secrets.token_bytes(NONCE_BYTES)
        sealed = nonce + self._boxes[self._newest].encrypt(nonce, text.encode(), None)
        return f"{SEALED}:{self._newest}:{_to_text(sealed)}"

    def open(self, text: str) -> Any:
        """The value that `seal` was given, whether it was sealed or left plain.

        Raises WrongKeyError if its key is not here and DamagedError if it was changed since.
        """
        kind, _, rest = text.partition(":")
        if kind == PLAIN:
            return _decode(rest)
        name, _, body = rest.partition(":")
        if kind != SEALED or not body:
            raise DamagedError("A stored value has no mark that says how it was sealed.")
        if name not in self._boxes:
            raise WrongKeyError(name)
        try:
            sealed = _to_bytes(body)
            plain = self._boxes[name].decrypt(sealed[:NONCE_BYTES], sealed[NONCE_BYTES:], None)
        except (InvalidTag, ValueError) as fault:
            raise DamagedError("A sealed value was changed after it was written.") from fault
        return _decode(plain.decode())

    def is_current(self, text: str) -> bool:
        """Whether the stored text is under the key that `seal` uses now (or plain, with `none`)."""
        return text.startswith(f"{PLAIN}:" if self._newest is None else f"{SEALED}:{self._newest}:")

    def use_lookup_secret(self, secret: bytes) -> None:
        """Makes `lookup` work; called once, when the database is unlocked."""
        self._lookup_secret = secret

    def lookup(self, text: str) -> str:
        """64 hexadecimal digits that stand for `text` in an indexed column; always the same ones.

        The caller has brought `text` into one form (trimmed, case). Raises RuntimeError before
        `storage.vault.unlock` has been called.
        """
        if self._lookup_secret is None:
            raise RuntimeError("Nothing can be looked up before storage.vault.unlock(database).")
        return hmac.digest(self._lookup_secret, text.encode(), "sha256").hex()


def clean(text: str) -> str:
    """`text` without NUL, which PostgreSQL refuses, and with half surrogates replaced by U+FFFD.

    A pair of halves becomes the character that it means.
    """
    text = text.replace("\0", "")
    return (
        text
        if _encodable(text)
        else text.encode("utf-16", "surrogatepass").decode("utf-16", "replace")
    )


def _clean_all(value: Any) -> Any:
    match value:
        case str():
            return clean(value)
        case dict():
            return {_clean_all(name): _clean_all(item) for name, item in value.items()}
        case list() | tuple():
            return [_clean_all(item) for item in value]
    return value


def _encodable(text: str) -> bool:
    try:
        text.encode()
    except UnicodeEncodeError:
        return False
    return True


def _decode(text: str) -> Any:
    try:
        return json.loads(text)
    except ValueError as fault:
        raise DamagedError("A stored value is not the JSON that was written.") from fault


def _read_key(word: str, number: int) -> bytes:
    try:
        key = _to_bytes(word)
    except ValueError:
        key = b""
    if len(key) != KEY_BYTES:
        raise ValueError(f"Key number {number} is not a key: {MAKE_ONE}.")
    return key


def _name(key: bytes) -> str:
    """Eight hexadecimal digits that tell keys apart and say nothing about them."""
    return _derive(key, "name").hex()[:8]


def _derive(key: bytes, purpose: str) -> bytes:
    info = f"boutwise {purpose}".encode()
    return HKDF(algorithm=SHA256(), length=KEY_BYTES, salt=None, info=info).derive(key)


def _to_text(data: bytes) -> str:
    return urlsafe_b64encode(data).rstrip(b"=").decode()


def _to_bytes(text: str) -> bytes:
    """Strict: one text for one value. Raises ValueError."""
    try:
        data = urlsafe_b64decode(text + "=" * (-len(text) % 4))
    except NotBase64 as fault:
        raise ValueError("not base64") from fault
    if _to_text(data) != text:
        raise ValueError("not the usual way to write these bytes")
    return data
