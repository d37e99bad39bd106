// @vitest-environment happy-dom
import { describe, expect, it } from "vitest";
import { endsOwnTime, stillTime } from "../src/desk/still_time";
import { memoryShelf } from "../src/line/memory";
import { makeStore } from "../src/line/store";
import { bringTime, keepTimeSecret, timeLink } from "../src/seat/time_link";
import type { DeskView, RosterRow } from "../src/wire";
import { factorFigures, factorWords } from "../src/words/factor";
import { publicView } from "./fixtures";

const NOW = 1_000_000_000;
const SECRET = "0123456789abcdef0123456789abcdef";

const row = (handle: string, leftMs: number | null, answered = false): RosterRow => ({
  player: handle,
  handle,
  from_round: 1,
  answered,
  marks: 0,
  of: 0,
  bench: "",
  takes_time: false,
  factor_percent: leftMs === null ? 100 : 200,
  clock: leftMs === null ? null : { limit_ms: 90_000, closes_at: NOW + leftMs, left_ms: null, paused: false },
});

const closed = (...roster: RosterRow[]): DeskView =>
  ({ public: publicView({ phase: "closed", clock: null }), roster }) as unknown as DeskView;

describe("who still has time", () => {
  it("has a clock that runs and has not answered, the longest first", () => {
    const view = closed(
      row("Ada", 5000),
      row("Bo", null),
      row("Cem", 9000),
      row("Dele", 7000, true),
      row("Esme", 0),
    );
    expect(stillTime(view, NOW).map((one) => one.row.handle)).toEqual(["Cem", "Ada"]);
    expect(stillTime(view, NOW + 6000).map((one) => one.leftMs)).toEqual([3000]);
  });

  it("is nobody while the round is open, and steps that end it are known", () => {
    const open = { ...closed(row("Ada", 5000)), public: publicView({}) };
    expect(stillTime(open, NOW)).toEqual([]);
    expect((["show_result", "let_talk", "strike_item"] as const).map(endsOwnTime)).toEqual([
      true,
      true,
      false,
    ]);
  });
});

describe("a private link", () => {
  it("keeps its secret for the seat and takes it out of the address", async () => {
    const shelf = memoryShelf();
    location.hash = new URL(timeLink("http://hamatehill.example", "KPTWX", SECRET)).hash;
    keepTimeSecret(shelf, "KPTWX");
    expect(location.hash).toBe("");
    const said: unknown[] = [];
    const answers = ["failed", "refused", "done"];
    const line = {
      say: async (draft: unknown) => {
        said.push(draft);
        return { result: answers.shift(), code: "", text: "No." };
      },
    };
    const privately = makeStore("");
    for (let tries = 0; tries < 3; tries += 1) {
      await bringTime(line as unknown as Parameters<typeof bringTime>[0], shelf, "KPTWX", privately);
    }
    expect(said).toEqual([
      { type: "bring_time", secret: SECRET },
      { type: "bring_time", secret: SECRET },
    ]);
    expect(privately.get()).toBe("No.");
  });

  it("says a factor in words and figures", () => {
    expect(([150, 200] as const).map((one) => [factorWords(one), factorFigures(one)])).toEqual([
      ["1.5 times", "1.5 ×"],
      ["twice", "2 ×"],
    ]);
  });
});
