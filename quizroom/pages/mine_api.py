"""The requests of a player's own page: JSON under /mine/api, opened by the player's own key."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime

from flask import Blueprint, Response, jsonify, request
from werkzeug.wrappers import Response as AnyResponse

from quizroom.pages.mine_entry import player_of_request, problem, welcome_of_request
from quizroom.pages.mine_faces import (
    outcome_face,
    second_look_face,
    set_face,
    settings_face,
    today_face,
)
from quizroom.pages.mine_flags import NO_READER, flagged
from quizroom.protocol.mine import (
    LookAnswer,
    LookAnswers,
    LookOutcomes,
    PlanSettings,
    PracticeOrder,
    PracticeSet,
)
from quizroom.protocol.mine_codec import Shown, Unreadable, read_sent, write_shown
from quizroom.protocol.sentences import SENTENCES
from quizroom.questions.deck import CannotDeal
from quizroom.room.refusals import Refused
from quizroom.second_look.asked import GivenAnswer, Wishes
from quizroom.service.look_flags import LookFlags, NoReader
from quizroom.service.players import Players
from quizroom.service.ports import NotStored
from quizroom.service.practice import MOST_SETS_A_DAY, Practice, TooManySets, Wanted
from quizroom.service.second_look import NoSuchReview, SecondLooks, UnknownList, UnknownZone

NO_REVIEW = "You had no seat in this review, or it is not kept any more. Go back to the list of reviews."
NO_SET = "This set is not kept any more. Order a new one."
NO_ZONE = "There is no such time zone. Use a name such as Europe/Paris or America/Chicago."
NO_LIST = "There is no such course list any more. Choose another."
ENOUGH_SETS = f"{MOST_SETS_A_DAY} sets in a day are the most. Go over those you have, or come back tomorrow."
NOT_KEPT = "The server could not keep this. Try again in a moment; nothing of yours is lost."


@dataclass(frozen=True, slots=True, kw_only=True)
class Mine:
    """What the page of a player alone is made from."""

    players: Players
    second_looks: SecondLooks
    practice: Practice
    flags: LookFlags


def mine_blueprint(mine: Mine) -> Blueprint:
    """The requests for second looks, practice and settings."""
    routes = Blueprint("mine_api", __name__)
    _add_reading(routes, mine)
    _add_writing(routes, mine)
    return routes


def _add_reading(routes: Blueprint, mine: Mine) -> None:
    catalogue = mine.second_looks.catalogue

    @routes.get("/mine/api/today")
    def today() -> AnyResponse:
        player = player_of_request()
        return _answered(lambda: today_face(catalogue, mine.second_looks.today(player)))

    @routes.get("/mine/api/second-look/<room>")
    def second_look(room: str) -> AnyResponse:
        player = player_of_request()
        return _answered(lambda: second_look_face(catalogue, *mine.second_looks.second_look(player, room)))

    @routes.get("/mine/api/practice/<set_id>")
    def practice_set(set_id: str) -> AnyResponse:
        found = mine.practice.find(player_of_request(), set_id)
        return problem(NO_SET, 404) if found is None else _json(set_face(catalogue, *found))


def _add_writing(routes: Blueprint, mine: Mine) -> None:
    catalogue, clock = mine.second_looks.catalogue, mine.second_looks.clock

    @routes.post("/mine/api/looks")
    def looks() -> AnyResponse:
        player_of_request()  # who has no key hears of that first

        def answered() -> LookOutcomes:
            sent, now = read_sent(LookAnswers, request.get_data()), clock.now()
            player = welcome_of_request(mine.players, now)
            came = mine.second_looks.answer(player, [_given(answer, now) for answer in sent.answers])
            return LookOutcomes(outcomes=tuple(map(outcome_face, came)))

        return _answered(answered)

    @routes.post("/mine/api/flags")
    def flags() -> AnyResponse:
        player = player_of_request()
        return _answered(lambda: flagged(mine.flags, player, request.get_data()))

    @routes.post("/mine/api/practice")
    def practice() -> AnyResponse:
        player_of_request()

        def made() -> PracticeSet:
            order = read_sent(PracticeOrder, request.get_data())
            player = welcome_of_request(mine.players, clock.now())
            return set_face(catalogue, *mine.practice.make(player, _wanted(order)))

        return _answered(made)

    @routes.put("/mine/api/settings")
    def settings() -> AnyResponse:
        player_of_request()

        def kept() -> PlanSettings:
            wishes = _wishes(read_sent(PlanSettings, request.get_data()))
            mine.second_looks.set_wishes(welcome_of_request(mine.players, clock.now()), wishes)
            return settings_face(wishes)

        return _answered(kept)


def _answered(work: Callable[[], Shown]) -> AnyResponse:
    """What the work gives, or why it came to nothing and what to do."""
    try:
        return _json(work())
    except Unreadable as error:
        return problem(f"This could not be read: {error}. Load the page again.", 400)
    except NoSuchReview:
        return problem(NO_REVIEW, 404)
    except UnknownZone:
        return problem(NO_ZONE, 400)
    except UnknownList:
        return problem(NO_LIST, 400)
    except NoReader:
        return problem(NO_READER, 404)
    except Refused as refusal:
        return problem(SENTENCES[refusal.code], 409)
    except CannotDeal as reason:
        return problem(str(reason), 409)
    except TooManySets:
        return problem(ENOUGH_SETS, 429)
    except NotStored:
        return problem(NOT_KEPT, 503)


def _json(shown: Shown) -> Response:
    response = jsonify(write_shown(shown))
    # What belongs to one player must not lie in a cache that others share.
    response.headers["Cache-Control"] = "private, no-cache"
    return response


def _given(answer: LookAnswer, now: datetime) -> GivenAnswer:
    return GivenAnswer(
        look=answer.look,
        choice=answer.choice,
        typed=answer.typed,
        certainty=answer.certainty,
        took_ms=answer.took_ms,
        answered_at=_moment(answer.answered_at, now),
        received_at=now,
    )


def _moment(milliseconds: int, now: datetime) -> datetime:
    try:
        return datetime.fromtimestamp(milliseconds / 1000, UTC)
    except (ValueError, OverflowError, OSError):
        return now


def _wanted(order: PracticeOrder) -> Wanted:
    return Wanted(
        order=order.order,
        course=order.course,
        families=order.families,
        regions=order.regions,
        rounds=order.rounds,
        kind=order.mode,
        seconds=order.seconds,
        typed=order.typed,
        spelling=order.spelling,
    )


def _wishes(settings: PlanSettings) -> Wishes:
    return Wishes(
        course=settings.course,
        exam_date=settings.exam_date,
        minutes_a_day=settings.minutes_a_day,
        time_zone=settings.time_zone,
    )
