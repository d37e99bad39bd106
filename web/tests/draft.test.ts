import { describe, expect, it } from "vitest";
import { draftText, isEmpty, sameDraft, withLetter, written } from "../src/seat/draft";
import type { ItemFace } from "../src/wire";
import { publicView } from "./fixtures";

const one = publicView({}).item as ItemFace;
const two: ItemFace = { ...one, format: "pick_n", pick: 2 };
const nothing = { choice: [], typed: [] };

describe("a draft", () => {
  it("holds one letter where one is asked for", () => {
    expect(withLetter(withLetter(nothing, "A", one), "C", one).choice).toEqual(["C"]);
  });

  it("takes letters and takes them back where several are asked for, never more than asked", () => {
    const full = withLetter(withLetter(nothing, "C", two), "A", two);
    expect(full.choice).toEqual(["A", "C"]);
    expect(withLetter(full, "B", two).choice).toEqual(["A", "C"]);
    expect(withLetter(full, "A", two).choice).toEqual(["C"]);
  });

  it("is the same in any order and however it was spaced", () => {
    expect(sameDraft(two, { choice: ["A", "C"], typed: [] }, { choice: ["C", "A"], typed: [] })).toBe(true);
    expect(
      sameDraft(
        two,
        { choice: [], typed: [" biceps  brachii ", ""] },
        { choice: [], typed: ["biceps brachii"] },
      ),
    ).toBe(true);
    expect(sameDraft(two, { choice: ["A"], typed: [] }, { choice: ["B"], typed: [] })).toBe(false);
    expect(sameDraft(two, nothing, null)).toBe(false);
  });

  it("is empty when nothing but blanks was typed", () => {
    expect(isEmpty({ choice: [], typed: ["  ", ""] })).toBe(true);
    expect(written({ choice: [], typed: ["", "brachialis "] })).toEqual(["brachialis"]);
    expect(draftText({ choice: ["A", "C"], typed: [] })).toBe("A, C");
  });
});
