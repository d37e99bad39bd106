"""Entries of a knowledge base in few words."""

from typing import Any

from quizroom.knowledge.model import Action, Attachment, Bone, Joint, Landmark, Movement, Nerve

CITED = ("common_practice",)


def bone(name: str, order: int) -> Bone:
    return Bone(id=name, name=name, order=order, region="arm")


def landmark(place: str, **more: Any) -> Landmark:
    holder, _, name = place.partition(".")
    words = name.replace("_", " ")
    fields = {"bones": (holder,), "label": f"{words} of the {holder}", "kind": "place"} | more
    return Landmark(id=place, name=words, **fields)


def joint(name: str, links: tuple[tuple[str, str], ...], movements: tuple[str, ...], order: int) -> Joint:
    bones = tuple(dict.fromkeys(bone for link in links for bone in link))
    return Joint(id=name, name=f"{name} joint", bones=bones, links=links, movements=movements, order=order)


def movement(name: str, antagonist: str) -> Movement:
    return Movement(id=name, name=name, verb=f"does {name}", antagonist=antagonist, meaning="moves")


def nerve(name: str, kind: Any, roots: tuple[str, ...], parents: tuple[str, ...] = ()) -> Nerve:
    return Nerve(id=name, name=name.replace("_", " "), kind=kind, roots=roots, parents=parents)


def root(name: str) -> Nerve:
    return Nerve(id=name.lower(), name=name, kind="root", roots=(name,))


def at(site: str, part: str = "", **more: Any) -> Attachment:
    return Attachment(site=site, part=part, sources=CITED, **more)


def act(joint: str, movement: str, role: Any = "prime", **more: Any) -> Action:
    return Action(joint=joint, movement=movement, role=role, sources=CITED, **more)
