// @vitest-environment happy-dom
import { render } from "preact";
import { act } from "preact/test-utils";
import { beforeEach, expect, test, vi } from "vitest";
import type { Line } from "../src/line/line";
import { keepsResults, keptKey } from "../src/line/own_key";
import { KeepChoice } from "../src/parts/keep_choice";
import { KeptPanel } from "../src/seat/kept_panel";
import { ownView } from "./fixtures";

beforeEach(() => localStorage.clear());

function shown(kept: boolean) {
  const root = document.createElement("div");
  const said: unknown[] = [];
  const line = {
    say: async (draft: unknown) => {
      said.push(draft);
      return { result: "done" };
    },
  } as unknown as Line;
  const say = vi.fn();
  act(() => render(<KeptPanel own={ownView({ kept })} line={line} say={say} />, root));
  return { root, said, say };
}

async function press(root: HTMLElement): Promise<void> {
  await act(async () => root.querySelector("button")?.click());
}

test("who is kept reads so, finds the second look, and can refuse with one press", async () => {
  const { root, said, say } = shown(true);
  expect(root.textContent).toContain("anonymous key");
  expect(root.querySelector("a[href='/mine']")).not.toBeNull();
  await press(root);
  expect(said).toEqual([{ type: "keep_results", player_key: "" }]);
  expect(keepsResults()).toBe(false);
  expect(say).toHaveBeenCalledWith("Your results are not kept.");
});

test("in a group without a host it speaks of the others", async () => {
  expect(shown(true).root.textContent).toContain("Your host sees your handle");
  const root = document.createElement("div");
  const own = ownView({ kept: true, group: { opener: false, ready: false, factor_counts: false } as never });
  act(() => render(<KeptPanel own={own} line={{} as Line} say={vi.fn()} />, root));
  expect(root.textContent).toContain("The others in this room see your handle");
  expect(root.textContent).not.toContain("host");
});

test("who refused can think better of it", async () => {
  const { root, said } = shown(false);
  expect(root.querySelector("a[href='/mine']")).toBeNull();
  await press(root);
  expect(said).toEqual([{ type: "keep_results", player_key: keptKey() }]);
  expect(keptKey()).toMatch(/^[a-z2-7]{16}$/);
});

test("at the door a tick says whether results are kept, and the next door remembers it", async () => {
  const root = document.body.appendChild(document.createElement("div"));
  act(() => render(<KeepChoice />, root));
  const tick = root.querySelector("input");
  expect(tick?.checked).toBe(true);
  await act(async () => tick?.click());
  expect(keepsResults()).toBe(false);
  const again = document.createElement("div");
  act(() => render(<KeepChoice />, again));
  expect(again.querySelector("input")?.checked).toBe(false);
});
