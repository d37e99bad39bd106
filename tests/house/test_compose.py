"""The file for Docker Compose, as far as it can be judged without a Docker engine: no image is built here."""

import re
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from ruamel.yaml import YAML

from quizroom.settings import Settings
from tests.house.checkout import ROOT, listed, text

COMPOSE = "docker-compose.yml"


@pytest.fixture(scope="module")
def service() -> dict[str, Any]:
    described: dict[str, Any] = YAML(typ="safe").load(text(COMPOSE))
    server: dict[str, Any] = described["services"]["quizroom"]
    return server


def schema_complaints(path: Path) -> str:
    """What the Compose Specification's own schema (carried by check-jsonschema) says against a file."""
    command = [sys.executable, "-m", "check_jsonschema", "--builtin-schema", "vendor.compose-spec", str(path)]
    ran = subprocess.run(command, capture_output=True, text=True, check=False)
    return "" if ran.returncode == 0 else ran.stdout + ran.stderr


def test_the_file_keeps_to_the_compose_specification() -> None:
    assert schema_complaints(ROOT / COMPOSE) == ""


def test_a_mistake_in_the_file_would_be_found(tmp_path: Path) -> None:
    wrong = tmp_path / COMPOSE
    wrong.write_text(text(COMPOSE).replace("retries: 3", "retrys: 3"), encoding="utf-8")
    assert "retrys" in schema_complaints(wrong)


def test_every_variable_is_a_setting_of_the_server(service: dict[str, Any]) -> None:
    named = {name for name in service["environment"] if name.startswith("QUIZROOM_")}
    assert named <= {f"QUIZROOM_{field.upper()}" for field in Settings.model_fields}


def test_the_server_runs_with_as_few_rights_as_it_needs(service: dict[str, Any]) -> None:
    assert int(service["user"]) > 0
    assert service["read_only"] is True
    assert service["cap_drop"] == ["ALL"]
    assert "no-new-privileges:true" in service["security_opt"]


def test_data_is_kept_in_the_volume_that_the_server_writes_to(service: dict[str, Any]) -> None:
    assert [volume.split(":")[1] for volume in service["volumes"]] == [
        service["environment"]["QUIZROOM_DATA"]
    ]


def test_health_is_asked_at_the_port_that_is_listened_on(service: dict[str, Any]) -> None:
    port = service["environment"]["QUIZROOM_PORT"]
    assert f"http://127.0.0.1:{port}/healthz" in " ".join(service["healthcheck"]["test"])
    assert all(published.endswith(f":{port}") for published in service["ports"])


def test_everything_the_image_copies_is_in_the_repository(service: dict[str, Any]) -> None:
    copies = re.findall(r"^COPY (?!--from)(.+) \S+$", service["build"]["dockerfile_inline"], re.MULTILINE)
    known = listed("--cached", "--others", "--exclude-standard")
    for pattern in " ".join(copies).split():
        assert [path for path in known if Path(path).match(pattern) or path.startswith(f"{pattern}/")], (
            pattern
        )
