"""From a fresh checkout to a running program, with the standard library alone.

`python3 -m quizroom` and `python3 -m tests` come through here. The first start makes `.venv` and
installs into it; later starts compare a stamp, which takes a few milliseconds, and hand over.
"""

import hashlib
import os
import sys
from importlib.util import find_spec
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
VENV = ROOT / ".venv"
STAMP = VENV / "quizroom-stamp"
PAGES = ROOT / "quizroom" / "static" / ".vite" / "manifest.json"
INSTALL_INPUTS = ("pyproject.toml", "web/hatch_build.py", "web/node_build.py")
PAGE_SUFFIXES = (".css", ".html", ".js", ".json", ".mjs", ".ts")
NO_FIT_NODE = 75  # web/node_build.py's exit code when the system has no Node that will do


def is_at_home() -> bool:
    """Whether this Python has quizroom already: in `.venv`, from a wheel, or in another environment."""
    if not (ROOT / "pyproject.toml").exists() or Path(sys.prefix).resolve() == VENV.resolve():
        return True
    return sys.prefix != sys.base_prefix and find_spec("flask_socketio") is not None


def hand_over(module: str, arguments: list[str], extra: str = "") -> None:
    """Bring `.venv` up to date and become `python -m module arguments` in it. Never returns."""
    prepare(extra)
    command = [str(venv_python()), "-m", module, *arguments]
    if sys.platform == "win32":  # there execv returns to the shell at once
        sys.exit(run(command))
    os.execv(command[0], command)  # noqa: S606 - no shell is wanted, and the program is our own Python


def prepare(extra: str) -> None:
    """Install what the stamp says has changed since the last start."""
    old, new = read_stamp(), fresh_stamp(extra)
    if old.get("extra"):  # an environment that has the tests' packages keeps them
        new["extra"] = old["extra"]
    if old == new and (PAGES.exists() or not new["pages"]):
        return
    os.environ["QUIZROOM_EXTRA"] = new["extra"]  # read by web/node_build.py
    if old.get("python") != new["python"] or not venv_python().exists():
        make_venv()
    if any(old.get(part) != new[part] for part in ("python", "install", "extra")) or not rebuild_pages():
        install(new["extra"])
    STAMP.write_text("".join(f"{part} {value}\n" for part, value in new.items()), encoding="utf-8")


def venv_python() -> Path:
    """The interpreter inside `.venv`."""
    return VENV / "Scripts" / "python.exe" if sys.platform == "win32" else VENV / "bin" / "python"


def read_stamp() -> dict[str, str]:
    """What the last complete install was made from; empty when there was none."""
    if not STAMP.exists():
        return {}
    lines = STAMP.read_text(encoding="utf-8").splitlines()
    return {part: value for part, _, value in (line.partition(" ") for line in lines)}


def fresh_stamp(extra: str) -> dict[str, str]:
    """What an install made now would be made from."""
    return {
        "python": f"{sys.version_info.major}.{sys.version_info.minor}",
        "extra": extra,
        "install": digest([ROOT / name for name in INSTALL_INPUTS]),
        "pages": digest(page_sources()),
    }


def page_sources() -> list[Path]:
    """Every file that the built pages depend on; empty when the checkout has no pages."""
    web = ROOT / "web"
    if not (web / "package.json").exists():
        return []
    top = [path for path in web.iterdir() if path.suffix in PAGE_SUFFIXES]
    below = [path for folder in ("src", "public") for path in (web / folder).rglob("*") if path.is_file()]
    return sorted(top + below)


def digest(paths: list[Path]) -> str:
    """One short text for the names and the contents of the files; empty for no files."""
    whole = hashlib.blake2b(digest_size=16)
    for path in paths:
        whole.update(f"{path.relative_to(ROOT)}\0".encode())
        whole.update(path.read_bytes())
    return whole.hexdigest() if paths else ""


def make_venv() -> None:
    """Make `.venv`, without pip where Debian's python3-venv is not installed."""
    ways = ([], ["--without-pip"]) if find_spec("ensurepip") else (["--without-pip"],)
    for way in ways:
        if run([sys.executable, "-m", "venv", "--clear", *way, str(VENV)], quiet=True) == 0:
            return
    sys.exit("Python could not make .venv. On Debian or Ubuntu: apt install python3-venv; then start again.")


def install(extra: str) -> None:
    """Install this checkout into `.venv` as editable, pages included."""
    say("Installing what quizroom needs into .venv: about half a minute, only when that has changed ...")
    target = f"{ROOT}[{extra}]" if extra else str(ROOT)
    options = ["install", "--quiet", "--disable-pip-version-check", "--retries", "2", "--editable", target]
    if run([*pip(), *options]) != 0:
        sys.exit(
            "quizroom could not be installed; the reason is above. If this computer is offline, connect it"
            " for this one start (later ones need no network) and start again."
        )


def pip() -> list[str]:
    """The command that installs into `.venv`: its own pip, or else the system's told to work there."""
    if any(VENV.glob("[Ll]ib/**/site-packages/pip/__main__.py")):
        return [str(venv_python()), "-m", "pip"]
    if find_spec("pip"):
        return [sys.executable, "-m", "pip", "--python", str(VENV)]
    sys.exit("Python has no pip here. On Debian or Ubuntu: apt install python3-pip; then start again.")


def rebuild_pages() -> bool:
    """Build the pages alone; False when only a whole install can bring the Node for it."""
    say("The pages have changed: building them ...")
    code = run([str(venv_python()), str(ROOT / "web" / "node_build.py")], quiet=True)
    if code in (0, NO_FIT_NODE):
        return code == 0
    sys.exit("The pages in web/ could not be built; the reason is above.")


def run(command: list[str], *, quiet: bool = False) -> int:
    """The exit code of a command; a quiet one speaks only when it fails."""
    import subprocess  # noqa: PLC0415 - a start with nothing to install does without its 10 ms

    if not quiet:
        return subprocess.run(command, check=False).returncode  # noqa: S603 - fixed words and our own paths
    ran = subprocess.run(command, check=False, capture_output=True, text=True)  # noqa: S603 - likewise fixed words
    if ran.returncode not in (0, NO_FIT_NODE):
        say(ran.stdout + ran.stderr)
    return ran.returncode


def say(sentence: str) -> None:
    """Tell the person at the terminal, apart from the program's own output."""
    print(sentence, file=sys.stderr, flush=True)  # noqa: T201 - the terminal is the interface here
