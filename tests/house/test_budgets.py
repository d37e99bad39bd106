"""Files and functions stay short enough to be read in one look (numbers: the project's own choice)."""

from functools import partial

import pytest

from tests.house.checkout import files, text
from tests.house.lengths import Budget, Length, findings, python_functions, typescript_functions

FILE_BUDGET = Budget(middle=80, most=200, any=400)
FUNCTION_BUDGET = Budget(middle=8, most=25, any=50)
CODE = {
    "python": partial(files, ".py", under=("quizroom/", "web/")),
    "typescript": partial(files, ".ts", ".tsx", under=("web/",)),
    "everything": partial(files, ".py", ".ts", ".tsx", under=("quizroom/", "tests/", "web/")),
}


def lines_of(path: str) -> int:
    return len(text(path).splitlines())


def functions_of(path: str) -> list[Length]:
    count = python_functions if path.endswith(".py") else typescript_functions
    return count(text(path), path)


@pytest.mark.parametrize("kind", CODE)
def test_files_are_short(kind: str) -> None:
    paths = [path for path in CODE[kind]() if not path.endswith("__init__.py")]
    assert findings([Length(lines_of(path), path) for path in paths], FILE_BUDGET) == []


@pytest.mark.parametrize("kind", CODE)
def test_functions_are_short(kind: str) -> None:
    assert findings([length for path in CODE[kind]() for length in functions_of(path)], FUNCTION_BUDGET) == []


def test_styles_are_no_longer_than_a_file_may_be() -> None:
    sheets = [Length(lines_of(path), path) for path in files(".css", under=("web/",))]
    assert [sheet for sheet in sheets if sheet.lines > FILE_BUDGET.any] == []


def test_a_python_function_is_measured_from_its_name_to_its_last_line() -> None:
    first = '@cache\ndef one(\n    a: int,\n) -> int:\n    """Doc."""\n    return a\n'
    source = first + "\nclass A:\n    def two(self): ...\n"
    assert [length.lines for length in python_functions(source, "x.py")] == [5, 1]


@pytest.mark.parametrize(
    "source,lines",
    [
        ("function one() {\n  return 1;\n}\nconst two = 2;\n", [3]),
        ("export function one(\n  a: string,\n): string {\n  return a;\n}\n", [5]),
        ("const one = (a: number) => a + 1;\n", [1]),
        ("const one = (a: number) =>\n  a +\n  1;\nconst b = 2;\n", [3]),
        ("const one = () => {\n  const two = () => {\n    go();\n  };\n\n  two();\n};\n", [7, 3]),
        ("class A {\n  one(a: string): void {\n    go(a);\n  }\n}\n", [3]),
        ("function One() {\n  return (\n    <p>don't {x}</p>\n  );\n}\n", [5]),
        ("describe('one', () => {\n  it('two', () => {\n    go();\n  });\n});\n", [3]),
        ("if (a) {\n  go();\n}\nfor (const x of y) {\n  go(x);\n}\n", []),
        ("type One = (a: number) => void;\n// a => b\ninterface B {\n  go: (a: number) => void;\n}\n", []),
    ],
)
def test_a_typescript_function_is_measured_by_its_indentation(source: str, lines: list[int]) -> None:
    assert [length.lines for length in typescript_functions(source, "x.ts")] == lines


def test_each_of_the_three_limits_is_found() -> None:
    budget = Budget(middle=8, most=25, any=50)
    assert findings([Length(51, "long"), *[Length(2, "short")] * 20], budget) == [
        "51 lines, of 50 allowed: long"
    ]
    assert "middle" in findings([Length(9, "a")] * 5, budget)[0]
    assert "nine of ten" in findings([*[Length(2, "a")] * 7, *[Length(30, "b")] * 3], budget)[0]
    assert findings([Length(8, "a")] * 5, budget) == []
