// @vitest-environment happy-dom
import { render } from "preact";
import { act } from "preact/test-utils";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { ActionBar } from "../src/desk/action_bar";
import { actionLabel, orderFor } from "../src/desk/orders";
import { makeServerClock } from "../src/line/server_clock";
import type { DeskView } from "../src/wire";
import { publicView } from "./fixtures";

const clock = makeServerClock(() => 1_000_000_000);

const deskView = (actions: DeskView["actions"], round = 3): DeskView => ({
  version: 9,
  now: 1_000_000_000,
  standings: false,
  holds_results: false,
  answered: 0,
  can_keep_own_time: true,
  players_take_time: true,
  room: "r1",
  public: publicView({ round, phase: actions[0] === "open_round" ? "explained" : "answering" }),
  seed: 1,
  families: ["nerve"],
  timing: "computed",
  fixed_seconds: 45,
  items: [],
  bench_warnings: [],
  changes: [],
  talks: [],
  roster: [],
  roster_later: false,
  sureness: null,
  actions,
});

describe("an order", () => {
  it("names the round it is meant for, so that a repeat does no harm", () => {
    const view = deskView(["close_round"]);
    expect(orderFor("close_round", view)).toEqual({ type: "close_round", round: 3 });
    expect(orderFor("open_round", view)).toEqual({ type: "open_round", round: 4 });
    expect(orderFor("open_door", deskView(["open_door"], 0))).toEqual({ type: "open_door", round: 0 });
    expect(orderFor("strike_item", view)).toEqual({ type: "strike_item", round: 3 });
    expect(actionLabel("open_round", view)).toBe("Open round 4");
  });

  it("says that it ends the time of single players only where it may and the host was asked", () => {
    const view = deskView(["show_result"]);
    expect(orderFor("show_result", view)).toEqual({ type: "show_result", round: 3 });
    expect(orderFor("show_result", view, true)).toEqual({
      type: "show_result",
      round: 3,
      ends_own_time: true,
    });
    expect(orderFor("pause_round", view, true)).toEqual({ type: "pause_round", round: 3 });
  });
});

describe("the steps of the review", () => {
  let root: HTMLElement;
  let onOrder: ReturnType<typeof vi.fn>;

  beforeEach(() => {
    localStorage.clear();
    root = document.createElement("main");
    document.body.append(root);
    onOrder = vi.fn(async () => true);
  });
  afterEach(() => {
    render(null, root);
    root.remove();
  });

  const show = (actions: DeskView["actions"]) =>
    act(() =>
      render(
        <ActionBar view={deskView(actions)} clock={clock} onOrder={onOrder as () => Promise<boolean>} />,
        root,
      ),
    );
  const press = (key: string, more: KeyboardEventInit = {}) =>
    act(
      async () =>
        void document.body.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, ...more })),
    );
  const next = () => root.querySelector<HTMLButtonElement>(".actions_next");

  it("puts the server's first step on the one big button, focused and under N", async () => {
    show(["close_round", "pause_round", "add_time", "end_review"]);
    expect(next()?.textContent).toContain("Close the round");
    expect(document.activeElement).toBe(next());
    await press("n");
    expect(onOrder).toHaveBeenCalledWith({ type: "close_round", round: 3 });
  });

  it("takes a key held down for one press, and none while keys are off", async () => {
    show(["close_round"]);
    await press("n", { repeat: true });
    expect(onOrder).not.toHaveBeenCalled();
    act(() => root.querySelector<HTMLInputElement>(".view_menu_keys input")?.click());
    await press("n");
    expect(onOrder).not.toHaveBeenCalled();
  });

  it("asks before the review ends", async () => {
    HTMLDialogElement.prototype.showModal ??= () => {};
    show(["end_review"]);
    await press("n");
    expect(onOrder).not.toHaveBeenCalled();
    expect(root.querySelector("dialog")?.textContent).toContain("cannot be opened again");
    await act(async () => root.querySelector<HTMLButtonElement>("dialog .button-main")?.click());
    expect(onOrder).toHaveBeenCalledWith({ type: "end_review", round: 3 });
  });

  it("never makes striking the next step", () => {
    show(["strike_item"]);
    expect(next()).toBeNull();
    expect(root.textContent).toContain("The review is finished");
  });
});
