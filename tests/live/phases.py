"""A class brought to each phase of a review, in which its server may be killed."""

from tests.live.lesson import Lesson, gathered, prepared
from tests.serving import Server


def preparing(server: Server) -> Lesson:
    return prepared(server)


def gathering(server: Server) -> Lesson:
    return gathered(server)


def answering(server: Server) -> Lesson:
    lesson = gathered(server, timing="fixed", seconds=600)
    lesson.open_next()
    lesson.answer("ada")
    lesson.answer("bo", wrong=True)
    return lesson


def paused(server: Server) -> Lesson:
    lesson = answering(server)
    lesson.step("pause_round")
    return lesson


def closed(server: Server) -> Lesson:
    lesson = answering(server)
    lesson.step("close_round")
    return lesson


def explained(server: Server) -> Lesson:
    lesson = closed(server)
    lesson.step("show_record")
    return lesson


def second_round(server: Server) -> Lesson:
    lesson = explained(server)
    lesson.open_next()
    lesson.answer("cem")
    return lesson


def finished(server: Server) -> Lesson:
    lesson = explained(server)
    lesson.step("end_review")
    return lesson


PHASES = (preparing, gathering, answering, paused, closed, explained, second_round, finished)
