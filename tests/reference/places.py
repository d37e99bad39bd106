"""Attachments in the words of outside tables, as bones and landmarks."""

import re
from collections.abc import Iterable

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.model import Muscle
from quizroom.knowledge.terms import normalise
from tests.reference.comparison import Row, Verdict

_FINGERS = ("2", "3", "4", "5")
_VERTEBRAE = ("cervical_vertebrae", "thoracic_vertebrae", "lumbar_vertebrae")

# pattern in the table's words -> bones, any of which will do
BONES: tuple[tuple[str, tuple[str, ...]], ...] = (
    (r"scapula|acromion|coracoid|glenoid", ("scapula",)),
    (r"clavicle", ("clavicle",)),
    (r"sternum", ("sternum",)),
    (r"\bribs?\b", ("ribs",)),
    (r"skull", ("occipital_bone",)),
    (r"vertebral column", _VERTEBRAE),
    (r"thoracic vertebrae|thoracic t7", ("thoracic_vertebrae",)),
    (r"cervical and thoracic vertebrae", ("cervical_vertebrae",)),
    (r"lumbar vertebrae", ("lumbar_vertebrae",)),
    (r"iliac crest", ("hip_bone",)),
    (r"humer(us|al)|epicondyle|deltopectoral", ("humerus",)),
    (r"\buln(a|ar)\b|olecranon|coronoid", ("ulna",)),
    (r"\bradius\b|radial tuberosity", ("radius",)),
    (r"pisiform", ("pisiform",)),
    (r"hamate", ("hamate",)),
    (r"trapezium", ("trapezium",)),
    (r"first metacarpal|metacarpal bone of digit 1", ("metacarpal_1",)),
    (r"second (and third )?metacarpal|metacarpal bone of digit 2", ("metacarpal_2",)),
    (r"third metacarpal|metacarpal bone of digit 3", ("metacarpal_3",)),
    (r"fifth metacarpal|metacarpal bone of digit 5", ("metacarpal_5",)),
    (r"metacarpal bone$", tuple(f"metacarpal_{digit}" for digit in ("1", *_FINGERS))),
    (r"middle phalanges of fingers", tuple(f"middle_phalanx_{digit}" for digit in _FINGERS)),
    (r"distal phalanges of fingers|distal phalanx$", tuple(f"distal_phalanx_{digit}" for digit in _FINGERS)),
    (r"distal phalanx of finger 5", ("distal_phalanx_5",)),
    (r"proximal phalanx of thumb", ("proximal_phalanx_1",)),
    (r"distal phalanx of thumb", ("distal_phalanx_1",)),
)

# pattern in the table's words -> the landmark in ours
LANDMARKS: tuple[tuple[str, str], ...] = (
    (r"coracoid process", "coracoid process"),
    (r"coronoid process", "coronoid process"),
    (r"acromion", "acromion"),
    (r"spine of scapula", "spine of the scapula"),
    (r"medial border of scapula|vertebral border", "medial border"),
    (r"lateral border", "lateral border"),
    (r"inferior angle", "inferior angle"),
    (r"supraspinous fossa", "supraspinous fossa"),
    (r"infraspinous fossa", "infraspinous fossa"),
    (r"subscapular fossa", "subscapular fossa"),
    (r"supraglenoid tubercle|tubercle above glenoid", "supraglenoid tubercle"),
    (r"infraglenoid tubercle", "infraglenoid tubercle"),
    (r"greater tubercle|ventral tubercle of humerus", "greater tubercle"),
    (r"lesser tubercle", "lesser tubercle"),
    (r"intertubercular sulcus", "intertubercular sulcus"),
    (r"deltoid tuberosity|deltopectoral crest", "deltoid tuberosity"),
    (r"medial epicondyle|entepicondyle", "medial epicondyle"),
    (r"lateral epicondyle|ectepicondyle", "lateral epicondyle"),
    (r"lateral supracondylar ridge", "lateral supracondylar ridge"),
    (r"olecranon", "olecranon"),
    (r"radial tuberosity", "radial tuberosity"),
    (r"styloid process of radius", "styloid process"),
    (r"lateral radius", "lateral surface"),
    (r"iliac crest", "iliac crest"),
    (r"\bbase of", "base"),
    (r"interosseous membrane", "interosseous membrane"),
    (r"palmar aponeurosis", "palmar aponeurosis"),
    (r"extensor expansion|tendon of extensor digitorum", "extensor expansion"),
    (r"bicipital aponeurosis", "bicipital aponeurosis"),
    (r"deep fascia", "deep fascia"),
    (r"thoracolumbar fascia", "thoracolumbar fascia"),
    (r"skin and fascia of palm", "skin of the palm"),
)


def is_named(catalogue: Catalogue, site: str, rows: Iterable[Row]) -> bool:
    """Whether one of the rows names the site, a bone it lies on or a landmark that holds it."""
    words, bones = _words(catalogue, site), catalogue.landmarks[site].bones
    texts = [row.value.lower() for row in rows]
    return any(
        any(set(any_of).intersection(bones) for pattern, any_of in BONES if re.search(pattern, text))
        or any(normalise(ours) in words for pattern, ours in LANDMARKS if re.search(pattern, text))
        for text in texts
    )


def judge_attachment(catalogue: Catalogue, muscle: Muscle, row: Row) -> Verdict:
    """Whether every bone and landmark that the row names is among the muscle's recorded sites."""
    rows = muscle.origins if row.fact_type == "origin" else muscle.insertions
    bones = {bone for one in rows for bone in catalogue.landmarks[one.site].bones}
    words = " ; ".join(f"{_words(catalogue, one.site)} ; {normalise(one.detail)}" for one in rows)
    text = row.value.lower()
    wanted_bones = [any_of for pattern, any_of in BONES if re.search(pattern, text)]
    wanted_words = [normalise(ours) for pattern, ours in LANDMARKS if re.search(pattern, text)]
    if not wanted_bones and not wanted_words:
        return "not comparable"
    found = all(bones.intersection(any_of) for any_of in wanted_bones)
    return "agrees" if found and all(one in words for one in wanted_words) else "disagrees"


def _words(catalogue: Catalogue, site: str) -> str:
    """All words of a site and of the larger landmarks that it lies in."""
    landmarks = [catalogue.landmarks[one] for one in (site, *catalogue.index.wholes[site])]
    terms = (word for one in landmarks for word in (one.name, one.label, *one.synonyms))
    return " ; ".join(normalise(term) for term in terms)
