import { describe, expect, it } from "vitest";
import {
  atRows,
  blankItem,
  forForm,
  forServer,
  moved,
  type Own,
  toMend,
  withFormat,
  withKey,
  withOption,
} from "../src/own/written";

function written(): Own {
  let own = withOption(blankItem(), 0, { text: "radial nerve", reason: "It does." });
  own = withOption(own, 2, { text: "ulnar nerve", reason: "It does not." });
  return withKey(own, 0, true);
}

describe("an item in the form", () => {
  it("is sent without the rows in which nothing was written", () => {
    expect(forServer(written()).options.map((option) => option.text)).toEqual([
      "radial nerve",
      "ulnar nerve",
    ]);
  });

  it("has the findings of the server at the rows of the form", () => {
    const finding = { field: "options.1.reason", rule: "r", text: "t", error: true };
    expect(atRows(written(), [finding])[0]?.field).toBe("options.2.reason");
    expect(atRows(written(), [{ ...finding, field: "options" }])[0]?.field).toBe("options");
  });

  it("has one key where one best answer is asked for, several where all are to be picked", () => {
    const own = written();
    expect(withKey(own, 2, true).options.map((option) => option.is_key)).toEqual([false, false, true, false]);
    const several = withKey(withFormat(own, "pick_n"), 2, true);
    expect(several.options.map((option) => option.is_key)).toEqual([true, false, true, false]);
    expect(withFormat(several, "one_best").options.map((option) => option.is_key)).toEqual([
      true,
      false,
      false,
      false,
    ]);
  });

  it("moves a row with all that belongs to it", () => {
    expect(
      moved(written(), 0, 1)
        .options.map((option) => option.text)
        .slice(0, 2),
    ).toEqual(["", "radial nerve"]);
    expect(moved(written(), 0, 1).options[1]?.is_key).toBe(true);
  });

  it("gets empty rows to write into when it is opened again", () => {
    expect(forForm(forServer(written())).options).toHaveLength(4);
  });

  it("has to be mended as long as an error is left, or a warning that nobody has taken", () => {
    const warning = { field: "stem", rule: "w", text: "", error: false };
    expect(toMend([])).toBe(0);
    expect(toMend([{ ...warning, taken: true }])).toBe(0);
    expect(toMend([warning, { ...warning, error: true }])).toBe(2);
  });
});
