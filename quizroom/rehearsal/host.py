"""The simulated host. A person at the real desk may step in at any time: each step looks first."""

from typing import Any, Literal

from quizroom.protocol import desk_messages, host_messages, messages
from quizroom.rehearsal.entry import CannotRehearse
from quizroom.rehearsal.line import Line, Reply, new_message_id

Step = Literal[
    "open_door",
    "open_round",
    "pause_round",
    "resume_round",
    "close_round",
    "show_result",
    "show_record",
    "end_review",
]


class Host:
    """A desk that is worked by a program; `desk` is the last view that it got."""

    def __init__(self, address: str, cookie: str) -> None:
        """Work a desk with the cookie of a host."""
        self._line = Line(address, cookie=cookie, hear=self._take_in)
        self.desk: dict[str, Any] = {}

    @property
    def phase(self) -> str:
        """Where the review is."""
        phase: str = self.desk["public"]["phase"]
        return phase

    @property
    def door_code(self) -> str:
        """What lets players in."""
        code: str = self.desk["public"]["door_code"]
        return code

    @property
    def round(self) -> int:
        """Number of the current round, 0 before the first."""
        number: int = self.desk["public"]["round"]
        return number

    @property
    def has_items_ahead(self) -> bool:
        """Whether there is another round to open."""
        planned: int = self.desk["public"]["rounds"]
        return self.round < planned

    def lay_out(
        self,
        *,
        title: str,
        course: dict[str, Any],
        rounds: int,
        seed: int,
        typed: bool = True,
        seconds: int | None = None,
        **rules: Any,
    ) -> None:
        """Have a review dealt and open its door. Without `seconds` each round has a time of its own.

        `rules` are more of what a review may have: certainty, benches.

        Raises:
            CannotRehearse: these settings do not yield a review.
        """
        reply = self._line.say(
            desk_messages.PrepareReview(
                id=new_message_id(),
                type="prepare_review",
                title=title,
                course=course["id"],
                families=tuple(course["families"]),
                rounds=rounds,
                timing="fixed" if seconds else "computed",
                seconds=seconds or 45,
                typed=typed,
                seed=seed,
                rehearsal=True,
                **rules,
            )
        )
        if reply["result"] != "done":
            raise CannotRehearse(reply["text"])
        self._line.greeting = desk_messages.OpenDesk(
            id=new_message_id(), type="open_desk", room=self.desk["room"]
        )
        self.step("open_door", number=0)

    def step(self, step: Step, *, number: int) -> Reply:
        """One step of the review, for the round that it is meant for; then look at the desk again."""
        reply = self._line.say(host_messages.RoundStep(id=new_message_id(), type=step, round=number))
        self.look()
        return reply

    def add_time(self, seconds: int) -> None:
        """Lengthen the open round."""
        self._line.say(host_messages.AddTime(id=new_message_id(), type="add_time", seconds=seconds))

    def strike(self, number: int) -> None:
        """Take an item out of all marks."""
        self._line.say(host_messages.StrikeStep(id=new_message_id(), type="strike_item", round=number))

    def show_standings(self) -> None:
        """Standings on the wall."""
        self._line.say(host_messages.ShowStandings(id=new_message_id(), type="show_standings", on=True))

    def say(self, message: messages.ClientMessage) -> Reply:
        """Any other order of a host; then look at the desk again."""
        reply = self._line.say(message)
        self.look()
        return reply

    def look(self) -> None:
        """Get the desk as it is now."""
        self._line.say(desk_messages.OpenDesk(id=new_message_id(), type="open_desk", room=self.desk["room"]))

    def close(self) -> None:
        """Leave the desk."""
        self._line.close()

    def _take_in(self, event: str, data: Any) -> None:
        # Views may overtake each other: one comes with a reply, another by itself.
        known = self.desk.get("version", 0) if self.desk.get("room") == data.get("room") else 0
        if event == "desk" and data["version"] >= known:
            self.desk = data
