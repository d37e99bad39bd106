"""What the pure core may not do: see the clock, roll dice of its own, open files, or lean on a framework.

`now`, `seed` and `new_id` are arguments there, so that a review can be played again from its log.
"""

import ast
import sys
from collections.abc import Iterator
from typing import NamedTuple

PURE = ("knowledge", "questions", "room", "marking", "views", "analysis", "second_look")
OPENS_FILES = "quizroom/knowledge/load.py"
# Other people's code in the core: where, and why it is worth it.
ALLOWED_PACKAGES = {
    ("quizroom/questions/typed.py", "rapidfuzz"): "how far a typed word is from a known term",
    ("quizroom/knowledge/load.py", "pydantic"): "reads the content files into the core's own values",
    ("quizroom/knowledge/load.py", "tomli"): "the standard library's TOML reader, compiled",
}
IMPURE_MODULES = {
    "asyncio", "concurrent", "glob", "http", "importlib", "io", "locale", "logging", "multiprocessing", "os",
    "secrets", "select", "shutil", "signal", "socket", "sqlite3", "subprocess", "sys", "tempfile",
    "threading", "time", "urllib", "uuid",
}  # fmt: skip
FILE_MODULES = {"glob", "io", "os"}  # what the one opener of files may take from these
IMPURE_CALLS = {"open", "input", "print", "exec", "eval", "breakpoint", "__import__"}
IMPURE_METHODS = {
    **dict.fromkeys(("now", "utcnow", "today", "time", "monotonic"), "the clock"),
    **dict.fromkeys(("uuid1", "uuid4", "SystemRandom", "urandom"), "chance"),
    **dict.fromkeys(("read_text", "read_bytes", "write_text", "write_bytes", "open"), "a file"),
    **dict.fromkeys(("exists", "is_file", "is_dir", "iterdir", "glob", "rglob", "stat"), "the disk"),
}


class Use(NamedTuple):
    """Something imported or called, and the line it stands on."""

    what: str
    line: int


def is_pure(path: str) -> bool:
    """Whether a file belongs to the pure core."""
    return path.startswith(tuple(f"quizroom/{name}{end}" for name in PURE for end in ("/", ".py")))


def imports(tree: ast.AST, *, whole_modules_only: bool = False) -> Iterator[Use]:
    """Every module that is imported anywhere in the file, by its full name; or only by `import name`."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (Use(alias.name, node.lineno) for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and not whole_modules_only:
            yield Use("." * node.level + (node.module or ""), node.lineno)


def impurities(path: str, source: str) -> list[str]:
    """Everything in a file of the pure core that the core may not do, in words."""
    tree = ast.parse(source)
    found = [*forbidden_imports(path, tree), *own_dice(tree), *forbidden_calls(path, tree)]
    return [f"{path}:{use.line} {use.what}" for use in sorted(found, key=lambda use: use.line)]


def forbidden_imports(path: str, tree: ast.AST) -> Iterator[Use]:
    """Imports of packages, and of the standard library's ways to the outside."""
    opener = FILE_MODULES if path == OPENS_FILES else set()
    for name, line in imports(tree):
        top = name.partition(".")[0]
        foreign = top not in sys.stdlib_module_names and top != "quizroom"
        if foreign and (path, top) not in ALLOWED_PACKAGES:
            yield Use(f"imports the package {name}", line)
        if top in IMPURE_MODULES - opener:
            yield Use(f"imports {name}, a way to the outside", line)


def own_dice(tree: ast.AST) -> Iterator[Use]:
    """Any use of `random` but `random.Random(seed)`; a given Random may be called `random` too."""
    module_is_here = any(use.what == "random" for use in imports(tree, whole_modules_only=True))
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and node.module == "random":
            yield from (
                Use(f"takes random.{alias.name}", node.lineno)
                for alias in node.names
                if alias.name != "Random"
            )
        if (
            isinstance(node, ast.Attribute)
            and node.attr != "Random"
            and is_random(node.value)
            and module_is_here
        ):
            yield Use(f"takes random.{node.attr}", node.lineno)
        if isinstance(node, ast.Call) and called(node) == "Random" and not node.args:
            yield Use("makes a Random without a seed", node.lineno)


def is_random(node: ast.AST) -> bool:
    """Whether a name in the source is the module `random`."""
    return isinstance(node, ast.Name) and node.id == "random"


def forbidden_calls(path: str, tree: ast.AST) -> Iterator[Use]:
    """Calls that reach the clock, files, the terminal or chance."""
    if path == OPENS_FILES:
        return
    for node in ast.walk(tree):
        if isinstance(node, ast.Call):
            name = called(node)
            if isinstance(node.func, ast.Name) and name in IMPURE_CALLS:
                yield Use(f"calls {name}()", node.lineno)
            if isinstance(node.func, ast.Attribute) and name in IMPURE_METHODS:
                yield Use(f"calls .{name}(): {IMPURE_METHODS[name]}", node.lineno)


def called(node: ast.Call) -> str:
    """The last name of what is called: `now` of `datetime.now()`."""
    match node.func:
        case ast.Attribute(attr=name) | ast.Name(id=name):
            return name
    return ""
