"""A simulated player in a seat."""

import secrets
import time

from quizroom.protocol import messages, seat_messages
from quizroom.rehearsal.line import Line, Reply, new_message_id
from quizroom.rehearsal.people import Person
from quizroom.rehearsal.skill import Choice
from quizroom.room.state import Certainty

SEAT_KEY_BYTES = 32


class SimulatedSeat:
    """One device of one person. `waits_ms` holds how long each acknowledgement took."""

    def __init__(self, address: str, door_code: str, person: Person) -> None:
        """A device that has not come in yet."""
        self._door_code = door_code
        self._key = secrets.token_urlsafe(SEAT_KEY_BYTES)
        self._line = Line(address)
        self.person = person
        self.is_seated = False
        self.waits_ms: list[float] = []
        self.refused: list[str] = []

    def enter(self) -> None:
        """Take a seat; a handle that is taken gets a figure, as its owner would do."""
        code = self._try_handle(self.person.handle)
        if code == "handle_taken":
            code = self._try_handle(f"{self.person.handle[:38]} 2")
        self.is_seated = not code
        if code:
            self.refused.append(code)
            return
        # Said again after every break, before anything else.
        self._line.greeting = seat_messages.ResumeSeat(
            id=new_message_id(), type="resume_seat", door_code=self._door_code, seat_key=self._key
        )

    def _try_handle(self, handle: str) -> str:
        reply = self._line.say(
            seat_messages.EnterSeat(
                id=new_message_id(),
                type="enter_seat",
                door_code=self._door_code,
                handle=handle,
                seat_key=self._key,
            )
        )
        code: str = reply["code"]
        return code

    def answer(
        self, number: int, choice: Choice, *, certainty: Certainty | None = None, again: bool = False
    ) -> None:
        """Hand in an answer, `again` after talking, and wait until it is in the log, or refused."""
        sent = time.perf_counter()
        reply = self._line.say(
            seat_messages.SubmitAnswer(
                id=new_message_id(),
                type="submit_answer",
                round=number,
                choice=choice.choice,
                typed=choice.typed,
                certainty=certainty,
                again=again,
            )
        )
        if reply["result"] == "done":
            self.waits_ms.append((time.perf_counter() - sent) * 1000)
        else:
            self.refused.append(reply["code"])

    def say(self, message: messages.ClientMessage) -> Reply:
        """Anything else that a player may say."""
        return self._line.say(message)

    def come_back(self) -> None:
        """Return to the seat after a break."""
        self._line.say(seat_messages.ShowView(id=new_message_id(), type="show_view"))

    def drop(self) -> None:
        """Lose the connection; the seat stays."""
        self._line.close()
