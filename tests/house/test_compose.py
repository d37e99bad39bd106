"""The file for Docker Compose, as far as it can be judged without a Docker engine: no image is built here."""

import re
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from ruamel.yaml import YAML

from quizroom.open_files import AMPLE
from quizroom.settings import Settings
from tests.house.checkout import ROOT, listed, text

COMPOSE = "docker-compose.yml"


def described() -> dict[str, Any]:
    """The whole file."""
    read: dict[str, Any] = YAML(typ="safe").load(text(COMPOSE))
    return read


SERVICES: dict[str, dict[str, Any]] = described()["services"]
SERVERS = [name for name, service in SERVICES.items() if service["image"] == "quizroom"]


@pytest.fixture(scope="module")
def service() -> dict[str, Any]:
    return SERVICES["quizroom"]


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


@pytest.mark.parametrize("server", SERVERS)
def test_every_variable_is_a_setting_of_the_server(server: str) -> None:
    named = {name for name in SERVICES[server]["environment"] if name.startswith("QUIZROOM_")}
    assert {"QUIZROOM_DATA", "QUIZROOM_ADDRESS"} <= named
    assert named <= {f"QUIZROOM_{field.upper()}" for field in Settings.model_fields}


@pytest.mark.parametrize("name", SERVICES)
def test_every_service_runs_with_as_few_rights_as_it_needs(name: str) -> None:
    service = SERVICES[name]
    assert int(service["user"]) > 0
    assert service["read_only"] is True
    assert service["cap_drop"] == ["ALL"]
    assert "no-new-privileges:true" in service["security_opt"]
    assert service["healthcheck"]["test"][0] == "CMD"


def test_every_server_reads_further_settings_from_one_file_that_need_not_be_there() -> None:
    assert all(
        SERVICES[name]["env_file"] == [{"path": "quizroom.env", "required": False}] for name in SERVERS
    )


def test_one_command_gives_the_single_server_and_a_profile_the_rest() -> None:
    assert [name for name, service in SERVICES.items() if "profiles" not in service] == ["quizroom"]
    assert all(service.get("profiles", ["scale"]) == ["scale"] for service in SERVICES.values())
    assert set(SERVICES["proxy"]["depends_on"]) == {"worker-1", "worker-2"}
    assert set(SERVICES["worker-1"]["depends_on"]) == {"postgres", "redis"}


def test_the_proxy_knows_each_worker_at_its_port() -> None:
    settings = SERVICES["worker-1"]["environment"]
    proxied = re.findall(r"server (worker-\d+):(\d+)", described()["configs"]["proxy"]["content"])
    assert proxied == [(name, settings["QUIZROOM_PORT"]) for name in SERVERS if name != "quizroom"]


def test_the_proxy_has_two_connections_for_each_player_and_its_health_is_asked_at_its_port() -> None:
    configuration = described()["configs"]["proxy"]["content"]
    connections, files = (
        int(number)
        for number in re.findall(r"(?:worker_connections|worker_rlimit_nofile) (\d+);", configuration)[::-1]
    )
    assert 2 * AMPLE <= connections < files <= SERVICES["proxy"]["ulimits"]["nofile"]
    (port,) = re.findall(r"listen (\d+) ssl;", configuration)
    assert f"https://127.0.0.1:{port}/healthz" in SERVICES["proxy"]["healthcheck"]["test"]
    assert all(published.endswith(f":{port}") for published in SERVICES["proxy"]["ports"])


def test_every_image_from_elsewhere_is_of_a_named_version() -> None:
    images = [service["image"] for service in SERVICES.values() if service["image"] != "quizroom"]
    images += re.findall(r"^FROM (\S+)", SERVICES["quizroom"]["build"]["dockerfile_inline"], re.MULTILINE)
    assert len(images) == 5
    assert [image for image in images if not re.search(r":\d+", image)] == []


def test_no_log_grows_for_ever() -> None:
    assert {service["logging"]["driver"] for service in SERVICES.values()} == {"local"}


def test_the_recipe_of_the_image_has_no_known_flaw(service: dict[str, Any], tmp_path: Path) -> None:
    assert recipe_complaints(tmp_path, service["build"]["dockerfile_inline"]) == ""


def test_a_flaw_in_the_recipe_would_be_found(service: dict[str, Any], tmp_path: Path) -> None:
    wrong = service["build"]["dockerfile_inline"].replace("WORKDIR /source", "WORKDIR source")
    assert "DL3000" in recipe_complaints(tmp_path, wrong)


def recipe_complaints(folder: Path, recipe: str) -> str:
    """What hadolint says against a Dockerfile."""
    file = folder / "Dockerfile"
    file.write_text(recipe, encoding="utf-8")
    command = [str(Path(sys.executable).with_name("hadolint")), "--no-color", str(file)]
    ran = subprocess.run(command, capture_output=True, text=True, check=False)
    return ran.stdout + ran.stderr


def test_data_is_kept_in_the_volume_that_the_server_writes_to(service: dict[str, Any]) -> None:
    assert [volume.split(":")[1] for volume in service["volumes"]] == [
        service["environment"]["QUIZROOM_DATA"]
    ]


def test_health_is_asked_at_the_port_that_is_listened_on(service: dict[str, Any]) -> None:
    port = service["environment"]["QUIZROOM_PORT"]
    assert f"http://127.0.0.1:{port}/readyz" in " ".join(service["healthcheck"]["test"])
    assert all(published.endswith(f":{port}") for published in service["ports"])


def test_everything_the_image_copies_is_in_the_repository(service: dict[str, Any]) -> None:
    copies = re.findall(r"^COPY (?!--from)(.+) \S+$", service["build"]["dockerfile_inline"], re.MULTILINE)
    known = listed("--cached", "--others", "--exclude-standard")
    for pattern in " ".join(copies).split():
        assert [path for path in known if Path(path).match(pattern) or path.startswith(f"{pattern}/")], (
            pattern
        )
