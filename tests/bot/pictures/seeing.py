"""How a picture is seen: contrast, colour-blindness, a phone's width. Independent of how it is drawn."""

import io
from collections.abc import Iterable

import numpy as np
from numpy.typing import NDArray
from PIL import Image

Pixels = NDArray[np.float64]

# Machado, Oliveira and Fernandes 2009, severity 1.0, for linear RGB (memory); each row sums to 1.
BLINDNESS: dict[str, list[list[float]]] = {
    "protanopia": [
        [0.152286, 1.052583, -0.204868],
        [0.114503, 0.786281, 0.099216],
        [-0.003882, -0.048116, 1.051998],
    ],
    "deuteranopia": [
        [0.367322, 0.860646, -0.227968],
        [0.280085, 0.672501, 0.047413],
        [-0.011820, 0.042940, 0.968881],
    ],
    "tritanopia": [
        [1.255528, -0.076749, -0.178779],
        [-0.078411, 0.930809, 0.147602],
        [0.004733, 0.691367, 0.303900],
    ],
}


def opened(png: bytes) -> Image.Image:
    return Image.open(io.BytesIO(png))


def linear(image: Image.Image) -> Pixels:
    """Linear light of each channel, 0 to 1 (sRGB, IEC 61966-2-1; memory)."""
    value = np.asarray(image.convert("RGB"), dtype=np.float64) / 255
    return np.where(value <= 0.04045, value / 12.92, ((value + 0.055) / 1.055) ** 2.4)


def light(image: Image.Image) -> Pixels:
    """Relative luminance (WCAG 2.2; memory)."""
    shown: Pixels = linear(image) @ np.array([0.2126, 0.7152, 0.0722])
    return shown


def contrast(image: Image.Image) -> float:
    """Of writing on its ground: the commonest colour against the one farthest from it (WCAG 2.2; memory).

    A colour of less than one pixel in 500 is an edge or a speck.
    """
    tones = np.round(light(image), 4)
    values, counts = np.unique(tones, return_counts=True)
    ground = values[counts.argmax()]
    solid = values[counts >= tones.size / 500]
    ratios = [(max(ground, v) + 0.05) / (min(ground, v) + 0.05) for v in solid]
    return float(max(ratios))


def as_seen(image: Image.Image, blindness: str) -> Pixels:
    """Linear RGB as somebody with a colour-blindness sees it."""
    seen: Pixels = np.clip(linear(image) @ np.array(BLINDNESS[blindness]).T, 0, 1)
    return seen


def difference(one: Pixels, two: Pixels) -> float:
    """The share of pixels that differ clearly, by a fifth of the range."""
    apart = np.abs(one - two)
    if apart.ndim == 3:
        apart = apart.max(axis=2)
    return float((apart > 0.2).mean())


def grey(image: Image.Image) -> Pixels:
    return np.asarray(image.convert("L"), dtype=np.float64) / 255


def at_phone_width(images: Iterable[Image.Image]) -> list[Image.Image]:
    """As 1080 pixels shown on 360."""
    return [
        each.resize((each.width // 3, each.height // 3), Image.Resampling.LANCZOS)
        for each in images
    ]
