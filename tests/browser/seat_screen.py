"""A player's page, used as players use it."""

from typing import Any, Literal

from playwright.sync_api import Locator, expect

from tests.browser.screen import Screen

By = Literal["tap", "keys"]


class SeatScreen(Screen):
    """What a player has in hand."""

    def enter(self, handle: str) -> None:
        """Write the handle and go in."""
        self.page.get_by_label("Handle").fill(handle)
        self.page.get_by_role("button", name="Take a seat").click()

    def is_in(self) -> None:
        """The page shows the seat before the first round."""
        expect(self.page.get_by_role("heading", name="You are in")).to_be_visible()

    def sees_round(self, number: int, rounds: int) -> None:
        """The page has got the open round."""
        expect(self.page.get_by_text(f"Round {number} of {rounds}", exact=True)).to_be_visible()
        expect(self.page.get_by_role("button", name="Hand in")).to_be_visible()

    def choose(self, item: dict[str, Any], *, right: bool, by: By = "tap") -> None:
        """Choose or write an answer, not handed in yet. `item` is the desk's, which knows the key."""
        if not item["options"]:
            self._write(answer_words(item, right=right), by=by)
            return
        wanted = answer_letters(item, right=right)
        if item["format"] in ("ordering", "matching"):
            self._put(item, wanted, by=by)
            return
        if item["format"] == "pick_n":
            self._untick_all(but=wanted, by=by)
        for letter in wanted:
            self._take(letter, by=by)

    def hand_in(self, by: By = "tap") -> None:
        """Hand in what was chosen."""
        if by == "keys":
            self.page.keyboard.press("Enter")
        else:
            self.page.get_by_role("button", name="Hand in").click()

    def is_received(self) -> None:
        """The page says that the answer is safe."""
        expect(self.page.locator(".hand_in")).to_contain_text("Answer received")

    def answer(self, item: dict[str, Any], *, right: bool, by: By = "tap") -> None:
        """All of it."""
        self.choose(item, right=right, by=by)
        self.hand_in(by)
        self.is_received()

    def _take(self, letter: str, *, by: By) -> None:
        row = self._row(letter)
        if not row.is_checked():
            self._toggle(letter, by=by)
        expect(row).to_be_checked()

    def _untick_all(self, *, but: list[str], by: By) -> None:
        for letter in "ABCDEFGHIJ":
            row = self._row(letter)
            if letter not in but and row.count() and row.is_checked():
                self._toggle(letter, by=by)

    def _toggle(self, letter: str, *, by: By) -> None:
        if by == "keys":
            self.page.keyboard.press(letter.lower())
        else:
            self.page.locator("label", has=self._row(letter)).click()

    def _row(self, letter: str) -> Locator:
        return self.page.locator(f"input[value={letter}]")

    def _put(self, item: dict[str, Any], letters: list[str], *, by: By) -> None:
        """Put letters in their places; with keys alone the focus is then on the button that hands in."""
        for place, letter in enumerate(letters):
            if item["format"] == "ordering":
                self._move(letter, place, by=by)
            else:
                self._match(letter, place, by=by)
        if by == "keys":
            self.page.get_by_role("button", name="Hand in").focus()

    def order(self) -> list[str]:
        """The letters of an ordering as they now stand."""
        return self.page.locator(".rows-order .row_letter").all_inner_texts()

    def _move(self, letter: str, place: int, *, by: By) -> None:
        up = self.page.get_by_role("button", name=f"Move {letter} up")
        while self.order().index(letter) > place:
            up.press("ArrowUp") if by == "keys" else up.click()

    def _match(self, letter: str, place: int, *, by: By) -> None:
        row = self.page.get_by_role("combobox").nth(place)
        row.press(letter) if by == "keys" else row.select_option(letter)
        expect(row).to_have_value(letter)

    def _write(self, words: list[str], *, by: By) -> None:
        for place, text in enumerate(words):
            line = self.page.get_by_role("textbox").nth(place)
            if by == "keys":
                self.page.keyboard.press("Tab")
                expect(line).to_be_focused()
                self.page.keyboard.press("ControlOrMeta+a")
                self.page.keyboard.type(text)
            else:
                line.fill(text)


def answer_letters(item: dict[str, Any], *, right: bool) -> list[str]:
    """The key, or an answer of the same size that is worth nothing."""
    if item["rows"]:
        right_letters = [row["letter"] for row in item["rows"]]
        wrong_letters = right_letters[::-1] if item["format"] == "ordering" else _turned(right_letters)
        return right_letters if right else wrong_letters
    key = [option["letter"] for option in item["options"] if option["is_key"]]
    wrong = [option["letter"] for option in item["options"] if not option["is_key"]]
    return key if right else sorted([*wrong, *key][: item["pick"]])


def answer_words(item: dict[str, Any], *, right: bool) -> list[str]:
    """The terms looked for, no more than are asked for, or a muscle of the leg."""
    return list(item["key_text"])[: item["pick"]] if right else ["tibialis anterior"]


def _turned(letters: list[str]) -> list[str]:
    return [*letters[1:], *letters[:1]]
