"""What the desk page starts with."""

from dataclasses import dataclass

from quizroom.service.host_ports import HostRole


@dataclass(frozen=True, slots=True, kw_only=True)
class CourseLine:
    """A course list that the desk offers."""

    id: str
    title: str
    description: str
    muscles: int
    families: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class HostFace:
    """Who sits at this desk. `helps` is the name of the owner whose reviews an assistant runs."""

    name: str
    role: HostRole
    helps: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DeskSettings:
    """What the desk page starts with; served as JSON at /desk/settings."""

    courses: tuple[CourseLine, ...]
    families: tuple[str, ...]
    join_address: str
    host: HostFace | None = None
