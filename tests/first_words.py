"""What a server says and reads for the first time, said beforehand: making readers and writers of all our
types takes a third of a second, which each server that is forked would spend once more.
"""


def say_first_words() -> None:
    """Read and write a message, and write an event; for a process that forks servers, after the patch."""
    from quizroom.protocol.codec import read_message, write  # noqa: PLC0415 - after the patch
    from quizroom.protocol.replies import Tally  # noqa: PLC0415 - likewise
    from quizroom.room.events import StandingsSet  # noqa: PLC0415 - likewise
    from quizroom.storage.event_codec import read_event, write_event  # noqa: PLC0415 - likewise

    read_message({"id": "first", "type": "probe_time"})
    write(Tally(version=0, phase="gathering", round=0, players=0, answered=0))
    read_event(write_event(StandingsSet(on=True)))
