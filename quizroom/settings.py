"""Settings of a server, from the environment and the command line."""

import os
from collections.abc import Mapping
from pathlib import Path
from typing import Annotated, Any, Literal, Self

from pydantic import AfterValidator, BaseModel, ConfigDict, Field, ValidationError, model_validator

from quizroom.storage.addresses import embedded_database, usable_database_url, usable_fanout_url

PREFIX = "QUIZROOM_"


class BadSettings(Exception):
    """Settings that cannot be used; the text says which and why."""


class Settings(BaseModel):
    """How a server runs. Each field is also an environment variable, `QUIZROOM_` and its name in capitals."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    host: str = Field(default="0.0.0.0", description="address to listen on")  # noqa: S104 - phones must reach it
    port: Annotated[int, Field(ge=0, le=65535, description="port to listen on; 0 takes a free one")] = 8000
    data: Path = Field(default_factory=lambda: default_data_folder(os.environ), description="data folder")
    content: Path | None = Field(default=None, description="content folder, if not the program's own")
    address: str = Field(default="", description="address that players use, such as https://review.example")
    capacity: Annotated[int, Field(ge=1, le=5000, description="most players in a room")] = 500
    groups: bool = Field(default=True, description="whether anybody may open a room for a study group")
    group_size: Annotated[int, Field(ge=2, le=50, description="most players in a study group")] = 12
    most_groups: Annotated[int, Field(ge=1, le=1000, description="most study groups at once")] = 50
    group_hours: Annotated[int, Field(ge=1, le=48, description="hours after which a group ends")] = 4
    gather_ms: Annotated[int, Field(ge=0, le=100, description="how long answers gather for one commit")] = 1
    handle_filter: bool = Field(default=True, description="whether rude handles are kept off the wall")
    keep_reviews_days: Annotated[
        int, Field(ge=0, le=36_500, description="days after its end a review is erased; 0: never")
    ] = 400
    keep_players_days: Annotated[
        int, Field(ge=0, le=36_500, description="days without a sign of them players are erased; 0: never")
    ] = 400
    contact: Annotated[
        str, Field(max_length=200, description="whom to ask about what is stored; stands on /privacy")
    ] = ""
    metrics: bool = Field(default=False, description="whether /metrics tells what the server counts")
    log_format: Literal["text", "json"] = Field(default="text", description="text, or a JSON object a line")
    database_url: Annotated[str, AfterValidator(usable_database_url)] = Field(
        default_factory=lambda known: embedded_database(known.get("data", Path())),
        description="database; several workers share one of PostgreSQL",
    )
    database_connections: Annotated[
        int, Field(ge=2, le=100, description="most connections of a worker to PostgreSQL")
    ] = 10
    fanout_url: Annotated[str, AfterValidator(usable_fanout_url)] = Field(
        default="", description="Redis, by which several workers tell each other at once of changes"
    )
    ping_s: Annotated[int, Field(ge=1, le=60, description="how often silent lines are kept awake, in s")] = 20
    transports: Literal["any", "websocket"] = Field(
        default="any", description="websocket alone, where a proxy cannot keep long polling on one worker"
    )

    days_ahead: Annotated[
        int, Field(ge=0, le=3650, description="days that the server's clock runs ahead")
    ] = 0

    @property
    def is_shared(self) -> bool:
        """Whether other workers may write to the same database."""
        return not self.database_url.startswith("sqlite")

    @model_validator(mode="after")
    def _fan_out_needs_a_shared_database(self) -> Self:
        if self.fanout_url and not self.is_shared:
            raise ValueError("fanout_url joins workers that share a database; set database_url as well")
        return self


def read_settings(environment: Mapping[str, str], given: Mapping[str, Any]) -> Settings:
    """Settings from `QUIZROOM_*` variables, overridden by what was `given` (None is not given).

    Raises:
        BadSettings: naming every setting at fault.
    """
    known = {
        name: environment[PREFIX + name.upper()]
        for name in Settings.model_fields
        if PREFIX + name.upper() in environment
    }
    chosen = known | {name: value for name, value in given.items() if value is not None}
    try:
        return Settings.model_validate(chosen)
    except ValidationError as error:
        faults = "; ".join(": ".join([*map(str, fault["loc"]), fault["msg"]]) for fault in error.errors())
        raise BadSettings(faults) from error


def default_data_folder(environment: Mapping[str, str]) -> Path:
    """Where data lies unless told otherwise: the user's data folder (XDG Base Directory Specification)."""
    base = environment.get("XDG_DATA_HOME") or str(Path.home() / ".local" / "share")
    return Path(base) / "quizroom"
