// @vitest-environment happy-dom
import { render } from "preact";
import { act } from "preact/test-utils";
import { expect, test, vi } from "vitest";
import type { Line } from "../src/line/line";
import { ClaimPanel } from "../src/seat/claim_panel";
import type { OwnClaim } from "../src/wire";

const WRONG = "That id is not on the roster of this review.";

function shown(claim: OwnClaim, text = "") {
  const root = document.createElement("div");
  const said: unknown[] = [];
  const line = {
    say: async (draft: unknown) => {
      said.push(draft);
      return text === "" ? { result: "done" } : { result: "refused", text };
    },
  } as unknown as Line;
  const say = vi.fn();
  act(() => render(<ClaimPanel claim={claim} line={line} say={say} />, root));
  return { root, said, say };
}

async function claimed(root: HTMLElement, id: string): Promise<void> {
  const field = root.querySelector("input") as HTMLInputElement;
  field.value = id;
  await act(async () => {
    field.dispatchEvent(new Event("input", { bubbles: true }));
  });
  await act(async () => {
    root.querySelector("form")?.dispatchEvent(new Event("submit", { cancelable: true }));
  });
}

test("an id is sent as it was typed, zeros and all, and the outcome is said", async () => {
  const { root, said, say } = shown({ claimed: false, tries_left: 5 });
  await claimed(root, " 00042 ");
  expect(said).toEqual([{ type: "claim_identity", institutional_id: "00042" }]);
  expect(say).toHaveBeenCalledWith("You are on the class roster.");
  expect(root.textContent).not.toContain("tries");
});

test("a wrong id is answered in the server's words", async () => {
  const { root, say } = shown({ claimed: false, tries_left: 1 }, WRONG);
  await claimed(root, "42");
  expect(root.textContent).toContain(WRONG);
  expect(root.textContent).toContain("1 try is left.");
  expect(say).toHaveBeenCalledWith(WRONG);
});

test("an empty field is not sent", async () => {
  const { root, said } = shown({ claimed: false, tries_left: 5 });
  await claimed(root, "  ");
  expect(said).toEqual([]);
  expect(root.textContent).toContain("Type your id first.");
});

test("whoever is on the roster, or has tried too often, finds no field", () => {
  const known = shown({ claimed: true, tries_left: 5 }).root;
  const spent = shown({ claimed: false, tries_left: 0 }).root;
  expect(known.querySelector("input") ?? spent.querySelector("input")).toBeNull();
  expect(known.textContent).toContain("You are on the class roster");
  expect(spent.textContent).toContain("Ask your instructor");
});
