"""Where the source asks a checker to look away, and whether it says why on the same line."""

import io
import re
import tokenize

# A reason stands after a dash, a hash or a colon; "likewise" below a line that has one is enough.
PYTHON = re.compile(
    r"""\#\s*(?:
        (?:ruff:\s*)?noqa:\s*[A-Z]+\d+(?:,\s*[A-Z]+\d+)*
      | type:\s*ignore\[[\w,\s-]+\]
      | fmt:\s*(?:off|skip|on)
      | pragma:\s*no\s*cover
    )(?P<reason>.*)""",
    re.VERBOSE,
)
PYTHON_ASKS = re.compile(r"#\s*(?:(?:ruff:\s*)?noqa|type:\s*ignore|pragma:)", re.IGNORECASE)
TYPESCRIPT_ASKS = re.compile(
    r"(?:@ts-ignore|@ts-expect-error|@ts-nocheck|biome-ignore|eslint-disable)(?P<rest>.*)"
)
TYPESCRIPT_RULE = re.compile(r"^[\w\s/-]*")
REASON = re.compile(r"^\s*(?:-+|#|:)\s*(?:likewise$|\S+\s+\S+)")


def unexplained(path: str, source: str) -> list[str]:
    """Every exemption without its reason, as `path:line text`."""
    find = unexplained_python if path.endswith(".py") else unexplained_typescript
    return [f"{path}:{line} {comment}" for line, comment in find(source)]


def unexplained_python(source: str) -> list[tuple[int, str]]:
    """Comments only: a string that holds such words exempts nothing."""
    tokens = tokenize.generate_tokens(io.StringIO(source).readline)
    comments = [(token.start[0], token.string) for token in tokens if token.type == tokenize.COMMENT]
    return [
        (line, comment) for line, comment in comments if PYTHON_ASKS.search(comment) and not explains(comment)
    ]


def explains(comment: str) -> bool:
    """Whether a Python comment names what it exempts from, and says why."""
    asked = PYTHON.search(comment)
    return asked is not None and REASON.match(asked["reason"]) is not None


def unexplained_typescript(source: str) -> list[tuple[int, str]]:
    """Biome wants `biome-ignore rule: reason`; TypeScript's own are held to the same."""
    found = []
    for number, line in enumerate(source.splitlines(), start=1):
        asked = TYPESCRIPT_ASKS.search(line)
        if asked and not REASON.match(TYPESCRIPT_RULE.sub("", asked["rest"], count=1)):
            found.append((number, line.strip()))
    return found
