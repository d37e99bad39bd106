// @vitest-environment happy-dom
import { render } from "preact";
import { act } from "preact/test-utils";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { keepKey, keptKey, keyBefore } from "../src/line/own_key";
import { phraseOf } from "../src/line/own_phrase";
import { KeyPanel, keptText } from "../src/mine/key_panel";
import { OtherKey, readKey } from "../src/mine/other_key";
import { type OwnData, ownDataOf } from "../src/mine/own_data";
import type { Me } from "../src/wire";

const KEY = "mzxw6ytbmzxw6ytb";
const OTHER = "abcdefghijklmn27";
const ME: Me = {
  known: true,
  since: Date.UTC(2031, 8, 3),
  seen_at: Date.UTC(2031, 8, 3),
  reviews: 2,
  keep_reviews_days: 400,
  keep_players_days: 400,
};

let root: HTMLElement;
let say: ReturnType<typeof vi.fn<(text: string) => void>>;

beforeEach(() => {
  localStorage.clear();
  root = document.body.appendChild(document.createElement("div"));
  say = vi.fn<(text: string) => void>();
});

afterEach(() => {
  act(() => render(null, root));
  root.remove();
});

function data(change: Partial<OwnData> = {}): OwnData {
  return {
    me: async () => ({ kind: "done", value: ME }),
    file: async () => ({ kind: "done", value: new Blob(["{}"]) }),
    forget: async () => ({ kind: "done", value: { ...ME, known: false } }),
    ...change,
  };
}

async function press(words: string): Promise<void> {
  const found = [...root.querySelectorAll("button")].find((button) => button.textContent?.includes(words));
  if (!found) throw new Error(`no button "${words}"`);
  await act(async () => found.click());
}

async function panel(own: OwnData = data(), onForgotten?: () => Promise<void>): Promise<void> {
  keepKey(KEY);
  const more = onForgotten ? { onForgotten } : {};
  await act(async () => render(<KeyPanel playerKey={KEY} say={say} data={own} {...more} />, root));
}

test("the key is not on the page until somebody asks for it", async () => {
  await panel();
  expect(document.documentElement.outerHTML).not.toContain(KEY);
  await press("Show link");
  await vi.waitFor(() => expect(root.querySelectorAll(".key_words li")).toHaveLength(8));
  expect(root.querySelector<HTMLInputElement>("#private_link")?.value).toContain(`/mine#${KEY}`);
  expect([...root.querySelectorAll(".key_words li")].map((one) => one.textContent)).toEqual(phraseOf(KEY));
  expect(root.querySelector("svg path")?.getAttribute("d")?.length).toBeGreaterThan(1000);
  await press("Hide");
  expect(root.querySelector("#private_link")).toBeNull();
});

test("it says what is kept and how long", () => {
  expect(keptText(ME)).toBe(
    "Kept since 3 Sept 2031: 2 reviews, and your second looks. It is erased when you have not been here for 400 days; each review 400 days after its end.",
  );
  expect(keptText({ ...ME, keep_players_days: 0, keep_reviews_days: 0 })).toContain("until you delete it.");
  expect(keptText({ ...ME, known: false })).toBe("Nothing is kept under this key yet.");
});

test("deleting asks once, then leaves nothing on the server nor on the device", async () => {
  localStorage.setItem("quizroom.handle", "Teal Talus");
  localStorage.setItem("quizroom.seat.CDFHJ", "k");
  localStorage.setItem("quizroom.theme", "dark");
  const forget = vi.fn(data().forget);
  const cleared = vi.fn(async () => undefined);
  await panel(data({ forget }), cleared);
  await press("Delete everything");
  expect(root.textContent).toContain("cannot be undone");
  await press("Keep it");
  expect(forget).not.toHaveBeenCalled();
  await press("Delete everything");
  await press("Yes, delete");
  expect(forget).toHaveBeenCalledOnce();
  expect(cleared).toHaveBeenCalledOnce();
  expect(Object.keys(localStorage)).toEqual(["quizroom.theme"]);
  expect(root.textContent).toContain("Everything is deleted");
});

test("a server that cannot delete is told, and the key stays", async () => {
  await panel(data({ forget: async () => ({ kind: "problem", text: "Try again in a minute." }) }));
  await press("Delete everything");
  await press("Yes, delete");
  expect(root.textContent).toContain("Try again in a minute.");
  expect(say).toHaveBeenCalledWith("Try again in a minute.");
  expect(keptKey()).toBe(KEY);
});

test("a link or a phrase is read, and what is wrong with it is said", async () => {
  expect(await readKey(`http://192.0.2.7:8000/mine#${OTHER}`)).toEqual({ key: OTHER });
  expect(await readKey(phraseOf(OTHER).join(" "))).toEqual({ key: OTHER });
  const problems = [
    "",
    "http://192.0.2.7:8000/mine",
    "seven words",
    `humerus ${phraseOf(KEY).slice(1).join(" ")}`,
  ];
  const said = await Promise.all(problems.map(readKey));
  expect(said.map((one) => ("problem" in one ? one.problem : ""))).toEqual([
    "Paste a private link, or type the eight words.",
    "This link lacks its key: it ends with # and 16 letters and figures.",
    "A phrase has 8 words; here are 2 words.",
    '"humerus" is not a word of any phrase. Look at it once more.',
  ]);
  const [first, second, ...rest] = phraseOf(KEY);
  expect(await readKey([second, first, ...rest].join(" "))).toEqual({
    problem: "One of the words is wrong, or they are in another order. Look at them once more.",
  });
});

test("another device's key takes over, and the one before can be taken back", async () => {
  keepKey(KEY);
  const onKey = vi.fn();
  const show = () =>
    act(async () => render(<OtherKey current={keptKey() ?? ""} say={say} onKey={onKey} />, root));
  await show();
  const field = root.querySelector("textarea");
  if (!field) throw new Error("no field");
  field.value = phraseOf(OTHER).join(" ");
  await act(async () => void field.dispatchEvent(new Event("input", { bubbles: true })));
  await act(
    async () => void root.querySelector("form")?.dispatchEvent(new Event("submit", { cancelable: true })),
  );
  await vi.waitFor(() => expect(onKey).toHaveBeenCalledOnce());
  expect([keptKey(), keyBefore()]).toEqual([OTHER, KEY]);
  await show();
  await press("Back to the key");
  expect(keptKey()).toBe(KEY);
});

test("the key goes in the header, never in the address", async () => {
  const ask = vi.fn(async () => new Response(JSON.stringify(ME)));
  await ownDataOf(KEY, ask as unknown as typeof fetch).me();
  const [address, options] = ask.mock.calls[0] as unknown as [string, RequestInit];
  expect(address).toBe("/mine/api/me");
  expect(options.headers).toEqual({ Authorization: `Bearer ${KEY}` });
});

test("without a line, and with a refusal, there is a sentence", async () => {
  const gone = ownDataOf(KEY, (() => Promise.reject(new Error("gone"))) as unknown as typeof fetch);
  expect(await gone.me()).toEqual({ kind: "problem", text: expect.stringContaining("no connection") });
  const refuse = async () => new Response(JSON.stringify({ problem: "Do this." }), { status: 503 });
  expect(await ownDataOf(KEY, refuse as typeof fetch).forget()).toEqual({
    kind: "problem",
    text: "Do this.",
  });
});
