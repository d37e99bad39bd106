import { describe, expect, it } from "vitest";
import { judged } from "../src/mine/judge";
import { comparable } from "../src/mine/terms";
import type { Look } from "../src/wire";
import { lookOf, typedLook } from "./mine_fixtures";

const chosen = (...choice: string[]) => ({ choice, typed: [] });
const typed = (...words: string[]) => ({ choice: [], typed: words });

function placed(format: "ordering" | "matching", key: string[]): Look {
  const look = lookOf("p");
  return { ...look, face: { ...look.face, format, pick: key.length }, solution: { ...look.solution, key } };
}

describe("marking without the server", () => {
  it("takes the key and nothing else of one best answer", () => {
    expect(judged(lookOf("a"), chosen("B"))).toEqual({ verdict: "right", mark: 1 });
    expect(judged(lookOf("a"), chosen("C"))).toEqual({ verdict: "wrong", mark: 0 });
  });

  it("calls a blank no answer, in every format", () => {
    expect(judged(lookOf("a"), chosen())).toEqual({ verdict: "none", mark: 0 });
    expect(judged(typedLook("a"), typed(" "))).toEqual({ verdict: "none", mark: 0 });
  });

  it("lets wrong picks of a set cancel right ones, never below nothing", () => {
    const look = lookOf("a");
    const set = {
      ...look,
      face: { ...look.face, format: "pick_n" as const, pick: 3 },
      solution: { ...look.solution, key: ["A", "B", "C"] },
    };
    expect(judged(set, chosen("A", "B", "D"))?.mark).toBeCloseTo(1 / 3);
    expect(judged(set, chosen("D", "E", "A"))?.mark).toBe(0);
  });

  it("marks an order by Kendall's tau: neighbours exchanged among four give 2/3 (Kendall 1938, from memory)", () => {
    const look = placed("ordering", ["A", "B", "C", "D"]);
    expect(judged(look, chosen("A", "B", "C", "D"))?.mark).toBe(1);
    expect(judged(look, chosen("B", "A", "C", "D"))?.mark).toBeCloseTo(2 / 3);
    expect(judged(look, chosen("D", "C", "B", "A"))?.mark).toBe(0);
  });

  it("marks rows by the share that is right", () => {
    expect(judged(placed("matching", ["A", "B", "A"]), chosen("A", "", "A"))).toEqual({
      verdict: "part",
      mark: 2 / 3,
    });
  });

  it("takes exact terms whatever their case, hyphens and filler words, and leaves all others to the server", () => {
    expect(judged(typedLook("a"), typed("the Biceps-Brachii muscle"))?.verdict).toBe("right");
    expect(judged(typedLook("a"), typed("biceps brachi"))).toBeNull();
    expect(judged(typedLook("a", 2), typed("brachialis", "deltoid"))).toBeNull();
  });

  it("counts names of the same thing once", () => {
    expect(judged(typedLook("a", 2), typed("biceps brachii", "biceps brachii muscle"))?.mark).toBe(0.5);
    expect(judged(typedLook("a", 2), typed("biceps brachii", "brachialis"))?.mark).toBe(1);
  });

  it("compares a term of filler words alone as it is", () => {
    expect(comparable("Musculus")).toBe("musculus");
    expect(comparable("M. bíceps")).toBe("biceps");
  });
});
