"""What the content lets be true of a muscle, read without quizroom.

*Possible* is whatever any recorded reading, whole, part, branch or synonym may make true: none of it
may be a wrong option. *Sure* is what the standard account under a course's rulings says.
"""

from functools import cache

from tests.questions.joint_ways import joints_surely_crossed, joints_that_may_be_crossed
from tests.questions.overlaps import all_above, in_line, same_action, sites_meet
from tests.questions.source_text import Reading, Table, Text

TABLES = {"origin": ["origins"], "insertion": ["insertions"], "attachment": ["origins", "insertions"]}
TABLES |= {"nerve": ["nerves"], "artery": ["arteries"], "action": ["actions"], "prime": ["actions"]}


class Oracle:
    """Answers for one content and the table of one course."""

    def __init__(self, text: Text, course: Table) -> None:
        self.text = text
        self.listed = set(course["muscles"]) & set(text.muscles)
        self.rulings = {rule["fact"]: rule["ruling"] for rule in course.get("house_rules", [])}
        self.may_be = cache(self._may_be)
        self.meet = cache(lambda one, other: sites_meet(text, one, other))

    def readings(self, relation: str, holder: str) -> list[Reading]:
        """All rows that hold for a muscle, or for `muscle/part`."""
        muscle, _, part = holder.partition("/")
        rows = [row for table in TABLES[relation] for row in self.text.rows[table]]
        return [row for row in rows if row.muscle == muscle and (not part or row.part in ("", part))]

    def _may_be(self, relation: str, holder: str, value: str) -> bool:
        """Whether any reading may make the value true of the holder."""
        if relation == "crossing":
            return value in joints_that_may_be_crossed(self.text, holder)
        if relation == "compartment":
            muscle = self.text.muscles[holder]
            contested = any(row["about"] == relation for row in muscle["differ"])
            own: str = muscle["compartment"]
            return own == value or (contested and self.is_next_to(muscle["region"], value))
        return any(self.values_meet(relation, row.value, value) for row in self.readings(relation, holder))

    def is_next_to(self, region: str, compartment: str) -> bool:
        """Whether a compartment lies in the region or in the one before or after it."""
        order = sorted(self.text.regions, key=lambda one: self.text.regions[one]["order"])
        there: str = self.text.compartments[compartment]["region"]
        return abs(order.index(region) - order.index(there)) <= 1

    def values_meet(self, relation: str, recorded: str, asked: str) -> bool:
        """Whether what is recorded may make true what is asked."""
        match relation:
            case "nerve":
                return recorded == asked or asked in all_above(self.text.nerves, recorded, "parents")
            case "artery":
                return in_line(self.text.arteries, recorded, asked, "parent")
            case "action" | "prime":
                return same_action(recorded, asked)
            case _:
                return bool(self.meet(recorded, asked))

    def is_sure(self, relation: str, holder: str, value: str) -> bool:
        """Whether the standard account says so."""
        if relation == "crossing":
            return value in joints_surely_crossed(self.text, holder)
        if relation == "compartment":
            muscle = self.text.muscles[holder]
            contested = any(row["about"] == relation for row in muscle["differ"])
            return not contested and bool(muscle["compartment"] == value)
        return any(
            self.says_so(relation, row.value, value) and self.is_standard(row)
            for row in self.readings(relation, holder)
            if relation != "prime" or row.role == "prime"
        )

    def says_so(self, relation: str, recorded: str, asked: str) -> bool:
        """Whether what is recorded surely makes true what is asked."""
        if relation == "nerve":
            return self.values_meet(relation, recorded, asked)
        if relation in ("origin", "insertion", "attachment"):
            return recorded == asked or asked in all_above(self.text.landmarks, recorded, "within")
        return recorded == asked

    def is_standard(self, row: Reading) -> bool:
        """Core, unless the course rules otherwise."""
        return bool(self.rulings.get(row.fact, "key" if row.status == "core" else "accept") == "key")

    def overlapping(self, relation: str, one: str, other: str) -> bool:
        """Whether two values may not stand side by side as options."""
        if relation == "nerve":
            return in_line(self.text.nerves, one, other, "parents")
        return relation in TABLES and self.values_meet(relation, one, other)

    def muscles_that_may(self, relation: str, value: str) -> set[str]:
        """All muscles of which the value may be true."""
        return {muscle for muscle in self.text.muscles if self.may_be(relation, muscle, value)}

    def bones_with(self, name: str) -> set[str]:
        """The bones that have a landmark by this name."""
        places = self.text.landmarks.values()
        return {bone for place in places if name in _words(place) for bone in place["bones"]}


def _words(place: Table) -> list[str]:
    return [place["name"], *place.get("synonyms", [])]
