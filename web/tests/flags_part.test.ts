import { expect, test } from "vitest";
import { gathered } from "../src/desk/flags_part";

const said = (text: string, settled = false, asked = "") => ({ text, settled, asked });

test("the same words of flags stand once, with how often they came", () => {
  const flags = [said("radial too"), said("B"), said("radial too"), said("radial too", true)];
  expect(gathered(flags).map(({ flag, times }) => [flag.text, flag.settled, times])).toEqual([
    ["radial too", false, 2],
    ["B", false, 1],
    ["radial too", true, 1],
  ]);
});

test("flags of different second looks stand apart", () => {
  expect(gathered([said("", false, "Which nerve?"), said("", false, "Which muscle?")])).toHaveLength(2);
});
