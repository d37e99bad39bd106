import { describe, expect, it } from "vitest";
import { difficultyShort, difficultyWords } from "../src/desk/difficulty_words";
import type { DeskItem } from "../src/wire";

const MEASURED = { right: 0.6234, answered: 41, low: 0.4555, high: 0.7564, whose: "course" } as const;

function item(fields: Partial<DeskItem>): DeskItem {
  return { predicted: null, observed: null, ...fields } as DeskItem;
}

describe("difficulty", () => {
  it("is said to be measured, with how many and how sure, before it is said to be predicted", () => {
    expect(difficultyWords(item({ predicted: "hard", observed: MEASURED }))).toEqual([
      "measured: 62 % right (n = 41, 46–76 %)",
      "predicted: hard",
    ]);
  });

  it("says when the classes of all courses were measured", () => {
    const observed = { ...MEASURED, whose: "all" } as const;
    expect(difficultyWords(item({ observed }))).toEqual([
      "measured: 62 % right (n = 41, 46–76 %, all courses)",
    ]);
  });

  it("is predicted alone as long as too few have answered, and unknown in older reviews", () => {
    expect(difficultyWords(item({ predicted: "easy" }))).toEqual(["predicted: easy"]);
    expect(difficultyWords(item({}))).toEqual([]);
  });

  it("is short in the list, a measurement where there is one", () => {
    expect(difficultyShort(item({ predicted: "easy", observed: MEASURED }))).toBe("measured: 62 % right");
    expect(difficultyShort(item({ predicted: "easy" }))).toBe("predicted: easy");
    expect(difficultyShort(item({}))).toBe("");
  });
});
