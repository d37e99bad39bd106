"""Where a study group opens its room."""

from collections.abc import Callable

from flask import Blueprint, jsonify
from werkzeug.wrappers import Response as AnyResponse

from quizroom.knowledge.catalogue import Catalogue
from quizroom.protocol.codec import write
from quizroom.protocol.group_messages import MOST_GROUP_ROUNDS, GroupCourse, GroupSettings
from quizroom.service.groups import GroupLimits


def add_groups(routes: Blueprint, settings: GroupSettings, page: Callable[[], str | AnyResponse]) -> None:
    """Give the blueprint the routes of study groups; `page` draws the page itself."""
    routes.get("/group", endpoint="group")(page)

    @routes.get("/group/settings")
    def group_settings() -> AnyResponse:
        return jsonify(write(settings))


def group_settings(catalogue: Catalogue, limits: GroupLimits) -> GroupSettings:
    """What groups may choose from; every course list, since none holds a secret."""
    lines = (
        GroupCourse(
            id=course.id,
            title=course.title,
            description=course.description,
            muscles=len(course.muscles),
        )
        for course in catalogue.courses.values()
    )
    return GroupSettings(
        open=limits.on,
        courses=tuple(lines),
        most_players=limits.size,
        hours=limits.hours,
        most_rounds=MOST_GROUP_ROUNDS,
    )
