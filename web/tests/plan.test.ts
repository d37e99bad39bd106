import { describe, expect, it } from "vitest";
import { firstPlan, whatIsWrong, withCourse, withFamily } from "../src/desk/plan";
import type { DeskSettings } from "../src/wire";

const course = (id: string, families: string[]) => ({ id, title: id, description: "", muscles: 9, families });
const settings: DeskSettings = {
  courses: [course("an-140", ["nerve", "action"]), course("pt-510", ["origin", "nerve", "artery"])],
  families: ["origin", "action", "nerve", "artery"],
  join_address: "http://192.0.2.7:8000",
};

describe("the plan of a review", () => {
  it("begins with the first course list and all its families, in the server's order", () => {
    expect(firstPlan(settings)).toMatchObject({
      course: "an-140",
      families: ["action", "nerve"],
      rounds: 10,
    });
  });

  it("takes over another course's families", () => {
    expect(withCourse(firstPlan(settings), settings, "pt-510").families).toEqual([
      "origin",
      "nerve",
      "artery",
    ]);
  });

  it("says what is missing before anything is sent", () => {
    const plan = firstPlan(settings);
    expect(whatIsWrong(plan)).toBe("");
    const without = withFamily(withFamily(plan, "action", false), "nerve", false);
    expect(whatIsWrong(without)).toContain("at least one family");
    expect(whatIsWrong({ ...plan, rounds: Number.NaN })).toContain("1 to 60");
    expect(whatIsWrong({ ...plan, seconds: 2 })).toBe("");
    expect(whatIsWrong({ ...plan, timing: "fixed", seconds: 2 })).toContain("5 to 3600");
    expect(whatIsWrong({ ...plan, course: "" })).toContain("course list");
  });
});
