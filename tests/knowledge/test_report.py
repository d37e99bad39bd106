"""The report on a content folder."""

from pathlib import Path

from tests.knowledge.files import brachialis, content_report, write


def test_no_news_is_told_as_such(tmp_path: Path) -> None:
    text = content_report(write(tmp_path))
    assert "1 muscles, 8 facts, 4 landmarks" in text
    assert text.endswith("No findings.")


def test_a_finding_shows_file_key_rule_and_remedy(tmp_path: Path) -> None:
    muscle = brachialis('site = "humerus.anterior_surface"', 'site = "humerus.anterior_surfaces"')
    text = content_report(write(tmp_path, muscles__arm__brachialis=muscle))
    assert "muscles/arm/brachialis.toml: origins[0].site:" in text
    assert "[every_site_is_known]" in text
    assert 'remedy: did you mean "humerus.anterior_surface"?' in text
    assert text.endswith("Findings: 1")


def test_a_syntax_error_shows_its_line(tmp_path: Path) -> None:
    text = content_report(write(tmp_path, bones='[humerus]\nname = "humerus\n'))
    assert "bones.toml:2: " in text
    assert "wait until it can" in text
