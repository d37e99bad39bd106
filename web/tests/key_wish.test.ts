import { describe, expect, it } from "vitest";
import { faultOf, keyDraft, wishOf, withLetter, withPlace } from "../src/desk/key_wish";
import type { DeskItem } from "../src/wire";

const OPTIONS = ["A", "B", "C", "D"].map((letter) => ({ letter, text: `nerve ${letter}` }));

function item(change: Partial<DeskItem>): DeskItem {
  const known = {
    round: 3,
    format: "one_best",
    options: OPTIONS,
    key: ["B"],
    key_text: ["nerve B"],
    pick: 1,
  };
  return { ...known, ...change } as DeskItem;
}

describe("a key that the host wishes", () => {
  it("begins with the key as it is, and letters come and go in order", () => {
    const wish = withLetter(wishOf(item({})), "A");
    expect(keyDraft(item({}), wish)).toEqual({
      type: "rekey_item",
      round: 3,
      key: ["A", "B"],
      terms: [],
      reason: "",
    });
    expect(withLetter(wish, "B").key).toEqual(["A"]);
  });

  it("needs as many letters or terms as were asked for", () => {
    const three = item({ format: "pick_n", key: ["A", "B", "C"], pick: 3 });
    expect(faultOf(three, wishOf(three))).toBe("");
    expect(faultOf(three, withLetter(wishOf(three), "A"))).toContain("at least 3");
    const typed = item({ format: "typed", options: [], key: [], key_text: ["axillary nerve"] });
    expect(faultOf(typed, { ...wishOf(typed), terms: " \n" })).toContain("at least 1");
  });

  it("holds terms one a line, without empty ones", () => {
    const typed = item({ format: "typed", options: [], key: [], key_text: ["axillary nerve"] });
    const wish = { ...wishOf(typed), terms: `${wishOf(typed).terms}\n\nradial nerve\n` };
    expect(keyDraft(typed, wish)).toMatchObject({ key: [], terms: ["axillary nerve", "radial nerve"] });
  });

  it("keeps every letter of an ordering in one place, and lets rows of a matching share one", () => {
    const ordering = item({ format: "ordering", key: ["C", "A", "D", "B"], pick: 4 });
    expect(withPlace(ordering, wishOf(ordering), 0, "D").key).toEqual(["D", "A", "C", "B"]);
    const matching = item({ format: "matching", key: ["D", "A", "B"], pick: 3 });
    expect(withPlace(matching, wishOf(matching), 0, "A").key).toEqual(["A", "A", "B"]);
  });
});
