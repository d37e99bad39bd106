"""What the pages of a player alone are shown: looks, sets, and the day with its outlook."""

from collections.abc import Iterable
from math import ceil

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.course import course_muscles, standard_term
from quizroom.knowledge.model import Course
from quizroom.protocol.mine import (
    CourseChoice,
    DayAhead,
    LookOutcome,
    MissedReview,
    PlaceChoice,
    PlanSettings,
    PracticeSet,
    RegionForecast,
    SecondLook,
    Today,
)
from quizroom.questions.model import FAMILIES, Item
from quizroom.questions.words import action_text, injury_text, words_of
from quizroom.second_look.asked import AskedLook, LookSet, Wishes
from quizroom.second_look.knowing import recall_of
from quizroom.second_look.plan import last_day
from quizroom.service.look_flags import Flagged, flag_places
from quizroom.service.mind import Mind, still_missed
from quizroom.service.seat_history import SeatHistory
from quizroom.service.second_look import Answered, Day
from quizroom.views.look import look_face
from quizroom.views.look_model import Look, LookFlag
from quizroom.views.moment import milliseconds

GONE = "This question is not kept any more, so its answer counts nothing."


def look_faces(
    catalogue: Catalogue, looks: Iterable[AskedLook], histories: Iterable[SeatHistory] = ()
) -> tuple[Look, ...]:
    """Looks as they are shown; the reviews of these histories have hosts who would read a flag."""
    asked = tuple(looks)
    places = flag_places(histories, asked)
    return tuple(
        look_face(look, subject_text(catalogue, look.course, look.item), _flag(places.get(look.id)))
        for look in asked
    )


def _flag(place: Flagged | None) -> LookFlag | None:
    if place is None:
        return None
    words = place.history.flags.get(place.played.number)
    return LookFlag(
        review=place.history.title, round=place.played.number, up=words is not None, text=words or ""
    )


def today_face(catalogue: Catalogue, day: Day) -> Today:
    """The day, and where the plan leads."""
    mind = day.mind
    return Today(
        day=mind.today,
        exam_date=last_day(mind.aim, mind.today),
        looks=look_faces(catalogue, day.looks, mind.histories),
        minutes=_minutes(sum(look.item.seconds for look in day.looks)),
        missed_reviews=tuple(_missed_reviews(mind)),
        forecast=_forecast(catalogue, day),
        ahead=tuple(
            DayAhead(date=sitting.day, count=len(sitting.facts), minutes=_minutes(sitting.seconds))
            for sitting in day.outlook.sittings
            if sitting.day > mind.today
        ),
        settings=settings_face(mind.wishes),
        courses=course_choices(catalogue),
    )


def second_look_face(catalogue: Catalogue, history: SeatHistory, looks: Iterable[AskedLook]) -> SecondLook:
    """What was missed in one review."""
    faces = look_faces(catalogue, looks, (history,))
    return SecondLook(room=history.room, title=history.title, looks=faces)


def set_face(catalogue: Catalogue, made: LookSet, looks: Iterable[AskedLook]) -> PracticeSet:
    """A set of practice."""
    return PracticeSet(
        id=made.id,
        title=made.title,
        mode=made.kind,
        seconds=made.seconds,
        looks=look_faces(catalogue, looks),
    )


def outcome_face(answered: Answered) -> LookOutcome:
    """What came of an answer."""
    judged = answered.judged
    if judged is None:
        return LookOutcome(look=answered.look, verdict="none", mark=0.0, because=GONE, due=None)
    return LookOutcome(
        look=answered.look,
        verdict=judged.verdict,
        mark=judged.mark,
        because=judged.because,
        due=answered.due,
    )


def settings_face(wishes: Wishes) -> PlanSettings:
    """The wishes as the page has them."""
    return PlanSettings(
        course=wishes.course,
        exam_date=wishes.exam_date,
        minutes_a_day=wishes.minutes_a_day,
        time_zone=wishes.time_zone,
    )


def course_choices(catalogue: Catalogue) -> tuple[CourseChoice, ...]:
    """The course lists to choose from."""
    return tuple(
        CourseChoice(
            id=course.id,
            title=course.title,
            families=tuple(family for family in FAMILIES if family in course.families),
            regions=_regions(catalogue, course),
        )
        for course in catalogue.courses.values()
    )


def subject_text(catalogue: Catalogue, course: str, item: Item) -> str:
    """What the stem asks about, in its own words; nothing that it does not say, for that might be the key."""
    text = _subject(catalogue, course, item.subject)
    return text if text and text.casefold() in item.stem.casefold() else ""


def _subject(catalogue: Catalogue, course: str, subject: str) -> str:
    if subject in catalogue.compartments:
        return catalogue.compartments[subject].name
    known = catalogue.courses.get(course)
    joint, _, movement = subject.partition(".")
    if known is not None and joint in catalogue.joints and movement in catalogue.movements:
        return action_text(words_of(catalogue, known), subject)
    if known is not None and subject in catalogue.levels:
        return injury_text(words_of(catalogue, known), subject)
    try:
        return standard_term(catalogue, subject)
    except KeyError:
        return ""


def _regions(catalogue: Catalogue, course: Course) -> tuple[PlaceChoice, ...]:
    ids = {muscle.region for muscle in course_muscles(catalogue, course)}
    regions = sorted((one for one in catalogue.regions.values() if one.id in ids), key=lambda one: one.order)
    return tuple(PlaceChoice(id=one.id, name=one.name) for one in regions)


def _missed_reviews(mind: Mind) -> Iterable[MissedReview]:
    for history in mind.histories:
        if history.missed:
            yield MissedReview(
                room=history.room,
                title=history.title,
                finished_at=None if history.finished_at is None else milliseconds(history.finished_at),
                missed=len(history.missed),
                left=sum(1 for _ in still_missed(mind, history)),
            )


def _forecast(catalogue: Catalogue, day: Day) -> tuple[RegionForecast, ...]:
    """By region the mean recall of what was missed: now, and on the day if the plan is kept."""
    mind = day.mind
    exam_at = mind.now + (last_day(mind.aim, mind.today) - mind.today)
    rows: dict[str, list[tuple[float, float]]] = {}
    for known in mind.known.values():
        if known.missed:
            region = _region(catalogue, known.muscle)
            then = day.outlook.known.get(known.fact, known)
            rows.setdefault(region, []).append((recall_of(known, mind.now), recall_of(then, exam_at)))
    return tuple(
        RegionForecast(
            region=region,
            facts=len(pairs),
            now=round(sum(now for now, _ in pairs) / len(pairs), 4),
            exam=round(sum(exam for _, exam in pairs) / len(pairs), 4),
        )
        for region, pairs in sorted(rows.items())
    )


def _region(catalogue: Catalogue, muscle: str) -> str:
    known = catalogue.muscles.get(muscle)
    return (
        catalogue.regions[known.region].name if known and known.region in catalogue.regions else "elsewhere"
    )


def _minutes(seconds: int) -> int:
    return ceil(seconds / 60)
