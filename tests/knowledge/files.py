"""A small content folder on disk, as its editors would write it."""

from collections.abc import Sequence
from pathlib import Path

from quizroom.knowledge.finding import Finding
from quizroom.knowledge.load import load_content
from quizroom.knowledge.report import findings_of, report

FILES = {
    "sources.toml": '[common_practice]\ntitle = "What courses teach"\naccess = "common practice"\n',
    "regions.toml": '[arm]\nname = "arm"\norder = 1\narteries = ["brachial_artery"]\n',
    "compartments.toml": '[arm_anterior]\nname = "anterior compartment of the arm"\nregion = "arm"\n',
    "bones.toml": (
        '[humerus]\nname = "humerus"\norder = 2\nregion = "arm"\n'
        '[ulna]\nname = "ulna"\norder = 3\nregion = "arm"\n'
        '[ribs]\nname = "ribs"\norder = 1\nregion = "arm"\nplural = true\n'
    ),
    "landmarks/arm.toml": (
        '[humerus.anterior_surface]\nname = "anterior surface"\nkind = "surface"\n'
        '[ulna.coronoid_process]\nname = "coronoid process"\nkind = "process"\n'
        '[soft.septum]\nname = "septum"\nlabel = "septum of the arm"\nkind = "septum"\n'
        'tissue = "soft"\nbones = ["humerus"]\n'
        '[ribs.ribs_3_5]\nname = "ribs 3-5"\nlabel = "ribs 3-5, near their cartilages"\nkind = "ribs"\n'
    ),
    "joints.toml": (
        '[elbow]\nname = "elbow joint"\norder = 1\nbones = ["humerus", "ulna"]\n'
        'links = [["humerus", "ulna"]]\nmovements = ["flexion", "extension"]\n'
    ),
    "movements.toml": (
        '[flexion]\nname = "flexion"\nverb = "flexes"\nantagonist = "extension"\nmeaning = "bends"\n'
        '[extension]\nname = "extension"\nverb = "extends"\nantagonist = "flexion"\nmeaning = "straightens"\n'
    ),
    "levels.toml": "",
    "nerves.toml": (
        '[c5]\nname = "C5"\nkind = "root"\nroots = ["C5"]\n'
        '[musculocutaneous_nerve]\nname = "musculocutaneous nerve"\nkind = "nerve"\n'
        'parents = ["c5"]\nroots = ["C5"]\n'
    ),
    "arteries.toml": '[brachial_artery]\nname = "brachial artery"\n',
    "lookalikes.toml": (
        '[surfaces]\nkind = "landmark"\nmembers = ["humerus.anterior_surface", "ribs.ribs_3_5"]\n'
        'tell = "One is a bone of the arm."\nsources = ["common_practice"]\n'
    ),
    "exceptions.toml": "",
    "retired.toml": '[muscles]\nretired = ["brachialis_internus"]\n',
    "courses/arm.toml": 'title = "Arm"\nmuscles = ["brachialis"]\nfamilies = ["origin"]\n',
    "muscles/arm/brachialis.toml": (
        'name = "brachialis"\nlatin = "musculus brachialis"\nmeaning = "of the arm"\n'
        'region = "arm"\ncompartment = "arm_anterior"\nlayer = "deep"\nsources = ["common_practice"]\n'
        '[[origins]]\nsite = "humerus.anterior_surface"\nsources = ["common_practice"]\n'
        '[[insertions]]\nsite = "ulna.coronoid_process"\nsources = ["common_practice"]\n'
        '[[actions]]\njoint = "elbow"\nmovement = "flexion"\nrole = "prime"\nsources = ["common_practice"]\n'
        '[[nerves]]\nnerve = "musculocutaneous_nerve"\nroots = ["C5"]\nsources = ["common_practice"]\n'
        '[[arteries]]\nartery = "brachial_artery"\nsources = ["common_practice"]\n'
    ),
}


def write(folder: Path, **changed: str | bytes | None) -> Path:
    """Write the folder; `changed` gives the new text of a file, or None for no file.

    Its keys are file names with `__` for `/` and without `.toml`.
    """
    swapped = {f"{name.replace('__', '/')}.toml": text for name, text in changed.items()}
    for name, text in (FILES | swapped).items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        if text is not None:
            path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return folder


def brachialis(old: str, new: str) -> str:
    """The text of brachialis with one piece replaced."""
    text = FILES["muscles/arm/brachialis.toml"]
    assert old in text
    return text.replace(old, new)


def content_report(folder: Path, own_courses: Sequence[Path] = ()) -> str:
    """What `content check` says of a folder, and of course lists that lie elsewhere."""
    loaded = load_content(folder, own_courses)
    return report(loaded, findings_of(loaded))


def one_finding(folder: Path) -> Finding:
    """What alone is wrong with the content of a folder."""
    loaded = load_content(folder)
    assert loaded.catalogue is None
    (finding,) = loaded.findings
    return finding
