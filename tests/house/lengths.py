"""How long files and functions are, counted in lines."""

import ast
import re
from collections.abc import Iterable, Sequence
from statistics import median, quantiles
from typing import NamedTuple

TYPESCRIPT_START = re.compile(
    r"""
    \bfunction\b .* \(            # function name(
  | =>                            # an arrow
  | ^\s* (?:(?:async|static|get|set|private|public|override)\s+)*
    (?!(?:if|for|while|switch|catch|return|super)\b)
    [\w$#]+ \( [^=]* \) (?: \s*:\s*[^=;]+ )? \s* \{ $      # a method
    """,
    re.VERBOSE,
)


class Length(NamedTuple):
    """The lines of one file or function, and where it stands."""

    lines: int
    where: str


class Budget(NamedTuple):
    """How long the middle one, nine of ten, and any one may be."""

    middle: int
    most: int
    any: int


def python_functions(source: str, where: str) -> list[Length]:
    """Every function and method, without its decorators and with its docstring."""
    functions = [
        node
        for node in ast.walk(ast.parse(source))
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)
    ]
    return [
        Length((node.end_lineno or node.lineno) - node.lineno + 1, f"{where}:{node.lineno} {node.name}")
        for node in functions
    ]


def typescript_functions(source: str, where: str) -> list[Length]:
    """Every function, read from the indentation that the formatter gives the source."""
    lines = source.splitlines()
    return [
        Length(extent(lines, start), f"{where}:{start + 1} {line.strip()[:40]}")
        for start, line in enumerate(lines)
        if TYPESCRIPT_START.search(line) and not only_describes(line)
    ]


def only_describes(line: str) -> bool:
    """Whether an arrow in the line only describes: in a comment, a function's type, a group of tests."""
    return (
        re.match(
            r"\s*(//|/?\*|(export )?(type|interface)\b|readonly\b|describe\(|\w+\??: \(.*\) => \S+;$)", line
        )
        is not None
    )


def extent(lines: Sequence[str], start: int) -> int:
    """The lines from `start` to where its indentation closes it again."""
    depth = indentation(lines[start])
    end = start
    for number in range(start + 1, len(lines)):
        line = lines[number]
        if line.strip() and indentation(line) < depth:
            break
        if line.strip() and indentation(line) == depth:
            if line.lstrip()[0] not in ")}]":
                break
            end = number
            if line.rstrip()[-1] not in "{(>":  # `): Type {` only ends the parameters
                break
        elif line.strip():
            end = number
    return end - start + 1


def indentation(line: str) -> int:
    """How far a line is set in."""
    return len(line) - len(line.lstrip())


def findings(lengths: Iterable[Length], budget: Budget) -> list[str]:
    """What is over the budget, in words."""
    known = sorted(lengths, reverse=True)
    if len(known) < 2:
        return []
    counts = [length.lines for length in known]
    middle, most = median(counts), quantiles(counts, n=10, method="inclusive")[8]
    found = [
        f"{lines} lines, of {budget.any} allowed: {where}" for lines, where in known if lines > budget.any
    ]
    longest = ", ".join(f"{where} ({lines})" for lines, where in known[:5])
    if middle > budget.middle:
        found.append(f"the middle one has {middle:g} lines, of {budget.middle} allowed; longest: {longest}")
    if most > budget.most:
        found.append(f"nine of ten reach {most:g} lines, of {budget.most} allowed; longest: {longest}")
    return found
