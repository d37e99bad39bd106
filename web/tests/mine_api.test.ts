import { describe, expect, it } from "vitest";
import { makeMineApi } from "../src/mine/api";
import type { Pages } from "../src/mine/kept_pages";
import { addressOf, type Route, routeOf } from "../src/mine/routes";
import { dayText } from "../src/words/dates";

function pages(): Pages & { kept: Map<string, string> } {
  const kept = new Map<string, string>();
  return {
    kept,
    keep: async (path, text) => void kept.set(path, text),
    find: async (path) => kept.get(path) ?? null,
  };
}
const json = (status: number, body: unknown) => async () => new Response(JSON.stringify(body), { status });
const noLine = async () => {
  throw new TypeError("Failed to fetch");
};

describe("asking the server", () => {
  it("shows the key as a bearer's, never in the address", async () => {
    let asked: [unknown, RequestInit | undefined] | null = null;
    const ask = async (address: unknown, how?: RequestInit) => {
      asked = [address, how];
      return new Response("{}");
    };
    await makeMineApi("k3y", pages(), ask as typeof fetch).read("/mine/api/today");
    expect(asked).toMatchObject(["/mine/api/today", { headers: { Authorization: "Bearer k3y" } }]);
  });

  it("keeps the last answer for the time without a line or with a busy server", async () => {
    const kept = pages();
    expect(await makeMineApi("k", kept, json(200, { minutes: 3 })).read("/a")).toEqual({
      kind: "fresh",
      value: { minutes: 3 },
    });
    for (const ask of [noLine, json(503, {})])
      expect(await makeMineApi("k", kept, ask).read("/a")).toEqual({ kind: "kept", value: { minutes: 3 } });
    expect(await makeMineApi("k", kept, noLine).read("/b")).toEqual({ kind: "no line" });
  });

  it("gives the server's sentence for a problem, or one of its own", async () => {
    const told = makeMineApi("k", pages(), json(409, { problem: "Choose another course list." }));
    expect(await told.send("POST", "/a", {})).toEqual({
      kind: "problem",
      status: 409,
      text: "Choose another course list.",
    });
    const untold = makeMineApi("k", pages(), async () => new Response("<html>", { status: 500 }));
    expect(await untold.read("/a")).toMatchObject({
      kind: "problem",
      text: expect.stringContaining("Try again"),
    });
  });
});

describe("where on the page one is", () => {
  it("is in the address and read from it again", () => {
    const routes: Route[] = [
      { page: "today" },
      { page: "look", room: "" },
      { page: "look", room: "a/b c" },
      { page: "practice" },
      { page: "set", set: "s1" },
    ];
    for (const route of routes) expect(routeOf(addressOf(route))).toEqual(route);
  });

  it("is today's page for anything else, a private link included", () => {
    for (const hash of ["", "#", "#/nowhere", "#abcd2345efgh6723", "#/%"])
      expect(routeOf(hash)).toEqual({ page: "today" });
  });
});

describe("days in words", () => {
  it("are those of the calendar, whatever the time zone", () => {
    expect(dayText("2031-11-08")).toBe("Sat 8 Nov");
    expect(dayText("soon")).toBe("soon");
  });
});
