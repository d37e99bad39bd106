"""All findings of a content folder, as text for whoever edits it."""

from collections import Counter
from collections.abc import Sequence

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.checks import check
from quizroom.knowledge.finding import Finding
from quizroom.knowledge.load import Loaded


def findings_of(loaded: Loaded) -> tuple[Finding, ...]:
    """Mistakes of form and breaches of the content rules, by file."""
    breaches = check(loaded.draft, loaded.unread) if loaded.draft else ()
    return tuple(sorted((*loaded.findings, *breaches), key=lambda one: (one.file, one.line or 0, one.key)))


def report(loaded: Loaded, findings: Sequence[Finding]) -> str:
    """Each finding with file, key, rule and remedy; then what was read, and how many of which rule."""
    lines = [finding_text(finding) for finding in findings]
    lines.append(_counts(loaded.draft) if loaded.draft else _NOT_CHECKED)
    by_rule = Counter(finding.rule for finding in findings)
    lines += [f"{count:5}  {rule}" for rule, count in by_rule.most_common()]
    lines.append(f"Findings: {len(findings)}" if findings else "No findings.")
    return "\n".join(lines)


def finding_text(finding: Finding) -> str:
    """Two lines: where and what, then the remedy."""
    place = f"{finding.file}:{finding.line}" if finding.line else finding.file
    where = f"{place}: {finding.key}" if finding.key else place
    return f"{where}: {finding.message} [{finding.rule}]\n    remedy: {finding.remedy}"


_NOT_CHECKED = "A vocabulary file cannot be read: the content rules wait until it can."


def _counts(catalogue: Catalogue) -> str:
    counted = {
        "muscles": len(catalogue.muscles),
        "facts": len(catalogue.index.facts),
        "landmarks": len(catalogue.landmarks),
        "joints": len(catalogue.joints),
        "nerves": len(catalogue.nerves),
        "arteries": len(catalogue.arteries),
        "look-alike sets": len(catalogue.lookalikes),
        "sources": len(catalogue.sources),
        "courses": len(catalogue.courses),
    }
    return "Read: " + ", ".join(f"{count} {name}" for name, count in counted.items()) + "."
