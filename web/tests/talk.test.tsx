// @vitest-environment happy-dom
import { render } from "preact";
import { act } from "preact/test-utils";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { orderFor } from "../src/desk/orders";
import { adviceText } from "../src/desk/talk_panel";
import { chooseTalkTime } from "../src/desk/talk_time";
import { makeOutbox } from "../src/line/outbox";
import { makeStore } from "../src/line/store";
import { Closed } from "../src/seat/closed";
import type { Handed, HandIn } from "../src/seat/hand_in";
import { TalkPhase } from "../src/seat/talking";
import type {
  DeskView,
  ItemFace,
  OwnView,
  PublicView,
  ResultFace,
  SecondFace,
  SubmitAnswer,
  TalkPanel,
} from "../src/wire";
import { announcement } from "../src/words/announcement";
import { closedView, ownView, publicView } from "./fixtures";

const item = publicView({}).item as ItemFace;
const first = { round: 3, choice: ["A"], typed: [] };
const SECOND: SecondFace = {
  answered: 20,
  right: 16,
  first_right: 18,
  options: [
    { letter: "A", count: 4, share: 0.2 },
    { letter: "B", count: 16, share: 0.8 },
    { letter: "C", count: 0, share: 0 },
  ],
  rows: [],
  typed: [],
};
let root: HTMLElement;

beforeEach(() => {
  localStorage.clear();
  window.scrollTo = () => {};
  root = document.createElement("main");
  document.body.append(root);
});
afterEach(() => {
  render(null, root);
  root.remove();
});

describe("a second answer", () => {
  it("takes no first one's place in the outbox, and its own newer one does", () => {
    const outbox = makeOutbox(localStorage, "box");
    const said = (id: string, again?: boolean): SubmitAnswer => ({
      ...{ id, type: "submit_answer", round: 3, choice: ["A"], typed: [] },
      ...(again && { again }),
    });
    for (const answer of [said("m1"), said("m2", true), said("m3", true)]) outbox.put(answer);
    expect(outbox.waiting().map((one) => one.id)).toEqual(["m1", "m3"]);
  });

  it("begins empty under the first one, and is handed in as a second", () => {
    const handIn = vi.fn(async () => {});
    const answer: SubmitAnswer = { id: "m1", type: "submit_answer", ...first };
    const handed = makeStore<Handed | null>({ answer, state: "received", text: "" });
    const hands: HandIn = { handed, handIn: handIn as HandIn["handIn"], sendWaiting: async () => {} };
    const view = publicView({ phase: "answering again" });
    const own = ownView({ answer: first });
    act(() => render(<TalkPhase view={view} item={item} own={own} hands={hands} say={() => {}} />, root));
    expect(root.textContent).toContain("Your first answer: A. Only the first counts for marks.");
    expect(root.querySelectorAll("input:checked")).toHaveLength(0);
    act(() => root.querySelector<HTMLInputElement>('input[value="B"]')?.click());
    act(() => root.querySelector<HTMLButtonElement>("button")?.click());
    expect(handIn).toHaveBeenCalledWith(3, ["B"], [], undefined, true);
  });
});

describe("a talk at the seat", () => {
  const show = (view: PublicView, own: OwnView) => {
    const none: HandIn = {
      handed: makeStore<Handed | null>(null),
      handIn: async () => {},
      sendWaiting: async () => {},
    };
    act(() => render(<TalkPhase view={view} item={item} own={own} hands={none} say={() => {}} />, root));
  };

  it("asks nothing of whoever came in after the first answering", () => {
    for (const phase of ["talking", "answering again"] as const) {
      show(publicView({ phase }), ownView({ from_round: 4 }));
      expect(root.textContent).toContain("You answer from round 4 on.");
      expect(root.querySelectorAll("input, button")).toHaveLength(0);
    }
  });

  it("shows the own first answer and nothing of right or wrong", () => {
    show(publicView({ phase: "talking" }), ownView({ answer: first }));
    expect(root.querySelector(".row-chosen")?.textContent).toContain("your choice");
    expect(root.querySelectorAll(".row-key, .row_bar")).toHaveLength(0);
  });

  it("is told aloud with its time, and so is answering again", () => {
    const before = { public: closedView({ result: null }), own: null };
    const clock = { limit_ms: 120_000, closes_at: 1_000_120_000, left_ms: null, paused: false };
    const talking = { public: publicView({ phase: "talking", clock }), own: null };
    expect(announcement(before, talking)).toBe("Talk with your neighbour about round 3. You have 2 minutes.");
    const again = { public: publicView({ phase: "answering again" }), own: null };
    expect(announcement(talking, again)).toBe("Answer round 3 again. You have 45 seconds.");
  });

  it("ends with both shares in each row, as words, figures and two kinds of bar", () => {
    const view: PublicView = closedView({ second: SECOND });
    const result = view.result as ResultFace;
    const mine = { round: 3, verdict: "wrong" as const, mark: 0, reasons: [], second: "right" as const };
    const own = ownView({ answer: first, second: { ...first, choice: ["B"] }, result: mine });
    act(() => render(<Closed view={view} own={own} result={result} />, root));
    const key = root.querySelector(".row-key");
    expect(key?.textContent).toContain("your second");
    expect(key?.querySelector(".row_turns")?.textContent).toMatch(/first 75 %.*18.*again 80 %.*16/);
    expect(key?.querySelectorAll(".row_bar-first, .row_bar:not(.row_bar-first)")).toHaveLength(2);
    expect(root.textContent).toContain("first: 18 of 24 right, 75 %");
    expect(root.textContent).toContain("After talking: right. Your first answer counts for marks.");
  });
});

describe("the desk's advice", () => {
  const talk = (advice: TalkPanel["advice"], right: number): TalkPanel => ({
    ...{ round: 3, first: { right, of: 23, share: right / 23 }, advice },
    ...{ second: null, change: null, twin_round: null, twin: null },
  });

  it("gives the share with a decimal, so that it never reads as the threshold", () => {
    expect(adviceText(talk("explain", 8))).toContain("8 of 23 right (34.8 %), fewer than 35 %");
    expect(adviceText(talk("talk", 12))).toContain("let them talk, then answer again");
    expect(adviceText(talk("go on", 20))).toContain("go on");
  });

  it("is carried out with the time that was chosen on this device", () => {
    const view = { public: publicView({}), items: [] } as unknown as DeskView;
    expect(orderFor("let_talk", view)).toEqual({ type: "let_talk", round: 3, seconds: 120 });
    chooseTalkTime(60);
    expect(orderFor("let_talk", view)).toEqual({ type: "let_talk", round: 3, seconds: 60 });
    chooseTalkTime(120);
  });
});
