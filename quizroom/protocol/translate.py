"""From messages of the wire to orders of the room."""

from quizroom.protocol import change_messages, host_messages, seat_messages, time_messages
from quizroom.protocol.change_messages import FlagMessage, KeyMessage
from quizroom.protocol.review_messages import MoveItem
from quizroom.protocol.talk_messages import LetTalk, TalkMessage, TalkStep
from quizroom.room import change_commands, commands, station_commands, talk_commands, time_commands
from quizroom.room.host_commands import MoveItem as MoveItemOrder
from quizroom.room.talk_commands import TalkCommand
from quizroom.service.hashing import hash_of_secret

PlainMessage = (
    host_messages.HostMessage
    | MoveItem
    | KeyMessage
    | time_messages.SetTimeFactor
    | time_messages.MakeTimeLink
)


def answer_command(message: seat_messages.SubmitAnswer, player: str) -> commands.SubmitAnswer:
    """An answer, always for the seat of the connection, never for one named in the message."""
    return commands.SubmitAnswer(
        player=player,
        round=message.round,
        choice=message.choice,
        typed=message.typed,
        certainty=message.certainty,
        again=message.again,
    )


def flag_command(message: FlagMessage, player: str) -> change_commands.ChangeCommand:
    """A flag, or one taken back, always for the seat of the connection."""
    if isinstance(message, change_messages.UnflagItem):
        return change_commands.UnflagItem(player=player, round=message.round)
    return change_commands.FlagItem(player=player, round=message.round, text=message.text)


def talk_command(message: TalkMessage) -> TalkCommand | None:
    """The order of a message about a talk, or None for the twin, which the service has to make."""
    match message:
        case LetTalk():
            return talk_commands.LetTalk(
                round=message.round, seconds=message.seconds, ends_own_time=message.ends_own_time
            )
        case TalkStep(type="open_again"):
            return talk_commands.OpenAgain(round=message.round, by_host=True)
        case TalkStep(type="close_again"):
            return talk_commands.CloseAgain(round=message.round, by_host=True)
        case TalkStep():
            return None


def host_command(message: PlainMessage, *, by: str) -> commands.Command | None:
    """The order of a host's message, or None for those that need the service (swap, open the door).

    `by` is the name of the host, for changes of what answers are worth.
    """
    match message:
        case host_messages.RoundStep():
            return _round_command(message)
        case host_messages.ItemStep(type="drop_item"):
            return commands.DropItem(position=message.position, item=message.item)
        case MoveItem():
            return MoveItemOrder(position=message.position, item=message.item, to=message.to)
        case host_messages.AddTime():
            return commands.AddTime(seconds=message.seconds, order=message.id)
        case host_messages.StrikeStep(type="strike_item"):
            return commands.StrikeItem(round=message.round, by=by)
        case host_messages.StrikeStep():
            return commands.RestoreItem(round=message.round, by=by)
        case change_messages.RekeyItem() | change_messages.RestoreKey() | change_messages.SettleFlags():
            return _key_command(message, by)
        case host_messages.RuleOnWords():
            words, accept = message.words, message.accept
            return commands.RuleOnWords(round=message.round, words=words, accept=accept, by=by)
        case host_messages.ShowStandings():
            return commands.ShowStandings(on=message.on)
        case host_messages.HoldResults():
            return commands.HoldResults(on=message.on)
        case host_messages.RenamePlayer():
            return commands.RenamePlayer(player=message.player, handle=message.handle)
        case host_messages.RemovePlayer():
            return commands.RemovePlayer(player=message.player, by=by)
        case time_messages.SetTimeFactor() | time_messages.MakeTimeLink():
            return _time_command(message)
        case _:
            return None


def bring_command(message: time_messages.BringTime, player: str) -> time_commands.BringTime:
    """A private link, for the seat of the connection."""
    return time_commands.BringTime(player=player, link=hash_of_secret(message.secret))


def taking_command(message: time_messages.TakingMessage, player: str) -> time_commands.TimeCommand:
    """More time that a player takes, always for the seat of the connection."""
    if isinstance(message, time_messages.TakeTimeAlways):
        return time_commands.TakeTimeAlways(player=player, on=message.on)
    return time_commands.TakeTime(player=player, round=message.round, time=message.time, again=message.again)


def _time_command(
    message: time_messages.SetTimeFactor | time_messages.MakeTimeLink,
) -> time_commands.TimeCommand:
    factor = message.factor_percent
    if isinstance(message, time_messages.SetTimeFactor):
        return time_commands.SetTimeFactor(player=message.player, factor_percent=factor)
    return time_commands.MakeTimeLink(link=hash_of_secret(message.secret), factor_percent=factor)


def _round_command(message: host_messages.RoundStep) -> commands.Command | None:
    match message.type:
        case "open_round":
            return commands.OpenRound(round=message.round, ends_own_time=message.ends_own_time)
        case "open_stations":
            return station_commands.OpenStations(round=message.round)
        case "ring_bell":
            return station_commands.RingBell(turn=message.round, by_host=True)
        case "pause_round":
            return commands.PauseRound(round=message.round)
        case "resume_round":
            return commands.ResumeRound(round=message.round)
        case "close_round":
            return commands.CloseRound(round=message.round, by_host=True)
        case "show_result":
            return commands.ShowResult(round=message.round, ends_own_time=message.ends_own_time)
        case "show_record":
            return commands.ShowRecord(round=message.round, ends_own_time=message.ends_own_time)
        case "end_review":
            return commands.EndReview(ends_own_time=message.ends_own_time)
        case _:
            return None


def _key_command(message: KeyMessage, by: str) -> change_commands.ChangeCommand:
    match message:
        case change_messages.RekeyItem():
            return change_commands.RekeyItem(
                round=message.round, key=message.key, terms=message.terms, reason=message.reason, by=by
            )
        case change_messages.RestoreKey():
            return change_commands.RekeyItem(round=message.round, by=by)
        case change_messages.SettleFlags():
            return change_commands.SettleFlags(round=message.round, settled=message.settled, by=by)
