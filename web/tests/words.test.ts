import { describe, expect, it } from "vitest";
import { callDue, clockCalls } from "../src/words/clock_calls";
import { differingParts } from "../src/words/differing";
import { keyWords, listed, marksText, percent, secondsText, secondsWords } from "../src/words/numbers";
import { breakable } from "../src/words/word_parts";

const bold = (texts: string[]) =>
  differingParts(texts).map((parts) => parts.filter((part) => part.differs).map((part) => part.text.trim()));

describe("the differing part of look-alikes", () => {
  it("is what the options do not share", () => {
    expect(bold(["flexor carpi radialis", "flexor carpi ulnaris"])).toEqual([["radialis"], ["ulnaris"]]);
  });

  it("never counts small words as shared or as differing", () => {
    expect(bold(["spine of the scapula", "head of the radius"])).toEqual([[], []]);
    expect(bold(["greater tubercle of the humerus", "shaft of the humerus"])).toEqual([
      ["greater tubercle"],
      ["shaft"],
    ]);
  });

  it("keeps every text whole", () => {
    const texts = ["lesser tubercle of the humerus", "greater tubercle of the humerus", "humerus"];
    expect(differingParts(texts).map((parts) => parts.map((part) => part.text).join(""))).toEqual(texts);
  });

  it("leaves unlike options and single ones alone", () => {
    expect(bold(["median nerve", "axillary artery"])).toEqual([[], []]);
    expect(bold(["median nerve"])).toEqual([[]]);
  });

  it("is told from its neighbour even where it is the first word", () => {
    expect(bold(["abductor pollicis longus", "adductor pollicis"])).toEqual([
      ["abductor", "longus"],
      ["adductor"],
    ]);
  });
});

describe("the calls of the clock", () => {
  it("come at half, a quarter and ten seconds", () => {
    expect(clockCalls(60_000).map((call) => call.text)).toEqual([
      "30 seconds left",
      "15 seconds left",
      "10 seconds left",
    ]);
  });

  it("do not crowd a short round", () => {
    expect(clockCalls(20_000).map((call) => call.text)).toEqual(["10 seconds left"]);
    expect(clockCalls(10_000)).toEqual([]);
  });

  it("fall due once, when the clock passes them", () => {
    expect(callDue(60_000, 30_200, 29_900)).toBe("30 seconds left");
    expect(callDue(60_000, 29_900, 29_600)).toBeNull();
    expect(callDue(60_000, 30_200, 9_000)).toBe("10 seconds left");
  });
});

describe("figures", () => {
  it("show seconds rounded up, so that 0 means over", () => {
    expect([secondsText(44_001), secondsText(65_000), secondsText(1), secondsText(0)]).toEqual([
      "45",
      "1:05",
      "1",
      "0",
    ]);
    expect([secondsWords(65_000), secondsWords(60_000), secondsWords(1_000)]).toEqual([
      "1 minute 5 seconds",
      "1 minute",
      "1 second",
    ]);
  });

  it("show marks and shares as people write them", () => {
    expect([marksText(7), marksText(2 / 3), marksText(2.5)]).toEqual(["7", "0.67", "2.5"]);
    expect(percent(13 / 24)).toBe("54 %");
    expect([listed([]), listed(["a"]), listed(["a", "b", "c"])]).toEqual(["", "a", "a, b and c"]);
    expect([keyWords(["a", "b"], 1), keyWords(["a", "b"], 2)]).toEqual(["a or b", "a and b"]);
  });
});

describe("very long words", () => {
  it("may break between their parts, and only there", () => {
    expect(breakable("metacarpophalangeal joint")).toBe("metacarpo\u00adphalangeal joint");
    expect(breakable("sternocleidomastoid")).toBe("sterno\u00adcleido\u00admastoid");
  });

  it("leave shorter ones whole", () => {
    expect(breakable("coracobrachialis, interosseous")).toBe("coracobrachialis, interosseous");
  });
});
