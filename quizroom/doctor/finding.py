"""What an examination finds."""

from dataclasses import dataclass
from typing import Literal

Kind = Literal["well", "remark", "fault"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One thing that was looked at.

    A fault keeps a class from being taken, or may lose something; a remark can wait.
    """

    kind: Kind
    about: str
    said: str
    """What was found, in a sentence."""
    remedy: str = ""
    """What to do about it, in a sentence; empty where all is well."""


def well(about: str, said: str) -> Finding:
    """Nothing is to be done."""
    return Finding(kind="well", about=about, said=said)


def remark(about: str, said: str, remedy: str) -> Finding:
    """To be mended when there is time."""
    return Finding(kind="remark", about=about, said=said, remedy=remedy)


def fault(about: str, said: str, remedy: str) -> Finding:
    """To be mended before a class comes."""
    return Finding(kind="fault", about=about, said=said, remedy=remedy)
