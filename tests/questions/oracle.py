"""What the standard account under a course's rulings makes sure, read without quizroom.

*Possible* is another matter and the same for all courses: see `possible`.
"""

from functools import cache

from tests.questions.joint_ways import joints_surely_crossed
from tests.questions.overlaps import all_above
from tests.questions.possible import TABLES, is_contested, meaning, readings
from tests.questions.source_text import Reading, Table, Text


class Oracle:
    """Answers for one content and the table of one course."""

    def __init__(self, text: Text, course: Table) -> None:
        self.text = text
        self.listed = set(course["muscles"]) & set(text.muscles)
        self.rulings = {rule["fact"]: rule["ruling"] for rule in course.get("house_rules", [])}
        self.is_sure = cache(self._is_sure)

    def _is_sure(self, relation: str, holder: str, value: str) -> bool:
        """Whether the standard account says so."""
        match relation:
            case "crossing":
                return value in joints_surely_crossed(self.text, holder)
            case "compartment":
                own: str = self.text.muscles[holder]["compartment"]
                return own == value and not is_contested(self.text, holder)
            case "root":
                return any(value in row.main for row in self.standard("nerve", holder))
            case "meaning":
                return meaning(self.text, holder) == meaning(self.text, value)
        return any(self.says_so(relation, row.value, value) for row in self.standard(relation, holder))

    def standard(self, relation: str, holder: str) -> list[Reading]:
        """The rows that count under the course's rulings; of prime movers only those."""
        return [
            row
            for row in readings(self.text, relation, holder)
            if self.is_standard(row) and (relation != "prime" or row.role == "prime")
        ]

    def says_so(self, relation: str, recorded: str, asked: str) -> bool:
        """Whether what is recorded surely makes true what is asked."""
        if recorded == asked:
            return True
        if relation == "nerve":
            return asked in all_above(self.text, "nerves", recorded)
        is_place = relation in TABLES and TABLES[relation][0] in ("origins", "insertions")
        return is_place and asked in all_above(self.text, "landmarks", recorded)

    def is_standard(self, row: Reading) -> bool:
        """Core, unless the course rules otherwise."""
        return bool(self.rulings.get(row.fact, "key" if row.status == "core" else "accept") == "key")

    def bones_with(self, name: str) -> set[str]:
        """The bones that have a landmark by this name."""
        places = self.text.landmarks.values()
        return {bone for place in places if name in _words(place) for bone in place["bones"]}


def _words(place: Table) -> list[str]:
    return [place["name"], *place.get("synonyms", [])]
