import { describe, expect, test } from "vitest";
import { byCourse, covers } from "../src/desk/course_links";
import { fieldOf, momentOf } from "../src/desk/planned_time";
import { found } from "../src/desk/review_order";
import type { ReviewLine } from "../src/wire";

function line(room: string, more: Partial<ReviewLine> = {}): ReviewLine {
  return { room, title: room, course: "Kinesiology", phase: "finished", rounds: 3, prepared_at: 1, ...more };
}

const ALL = [
  line("old", { prepared_at: 1 }),
  line("new", { prepared_at: 9 }),
  line("later", { phase: "preparing", planned_at: 200 }),
  line("sooner", { phase: "preparing", planned_at: 100 }),
  line("draft", { phase: "preparing", prepared_at: 5 }),
  line("class", { phase: "answering" }),
  line("away", { archived: true, prepared_at: 20 }),
];
const rooms = (lines: ReviewLine[]) => lines.map((one) => one.room).join(" ");

describe("the list of reviews", () => {
  test("shows the class first, then what is planned by day, then the newest", () => {
    expect(rooms(found(ALL, "", "current"))).toBe("class sooner later new draft old");
  });

  test("is narrowed by state", () => {
    expect(rooms(found(ALL, "", "preparing"))).toBe("sooner later draft");
    expect(rooms(found(ALL, "", "in class"))).toBe("class");
    expect(rooms(found(ALL, "", "finished"))).toBe("new old");
    expect(rooms(found(ALL, "", "archived"))).toBe("away");
    expect(found(ALL, "", "all")).toHaveLength(ALL.length);
  });

  test("is searched by all words, in title and course, whatever case and accents", () => {
    const mixed = [line("a", { title: "Müller-Elder, week 3" }), line("b", { title: "week 3" })];
    expect(rooms(found(mixed, "  WEEK muller ", "current"))).toBe("a");
    expect(rooms(found(mixed, "kinesio 3", "current"))).toBe("a b");
    expect(found(mixed, "nobody", "current")).toEqual([]);
  });
});

describe("the time of a plan", () => {
  test("goes into a field and back, to the minute, in the time of this device", () => {
    for (const at of [Date.UTC(2031, 0, 9, 3, 5), Date.UTC(2031, 6, 31, 23, 59)]) {
      expect(momentOf(fieldOf(at))).toBe(at);
    }
  });

  test("is none where nothing is filled in", () => {
    expect(fieldOf(null)).toBe("");
    expect(momentOf("")).toBeNull();
    expect(momentOf("no day")).toBeNull();
  });
});

describe("the courses over time", () => {
  const DAY_MS = 86_400_000;
  const held = [
    line("b", { course: "Kinesiology", finished_at: 40 * DAY_MS }),
    line("a", { course: "Anatomy I" }),
    line("c", { course: "Kinesiology", finished_at: 10 * DAY_MS }),
  ];

  test("name each course once, with its reviews", () => {
    expect(byCourse(held).map(([course, lines]) => [course, rooms(lines)])).toEqual([
      ["Anatomy I", "a"],
      ["Kinesiology", "b c"],
    ]);
  });

  test("say how many reviews were held, and from when to when", () => {
    expect(covers(byCourse(held)[1]?.[1] ?? [], false)).toBe("2 reviews held, 11 Jan 1970 to 10 Feb 1970");
    expect(covers([line("x", { finished_at: DAY_MS })], true)).toBe("1 review held or more, 2 Jan 1970");
  });
});
