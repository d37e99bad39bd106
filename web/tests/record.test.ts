import { describe, expect, it } from "vitest";
import { boneKind } from "../src/record/bone_kinds";
import { briefRecord, differencesOf, layerText } from "../src/record/brief";
import { boneShapes, type MeasuredStation, outline } from "../src/record/geometry";
import { pathOf } from "../src/record/stations";
import { frameOf, strandsOf } from "../src/record/strands";
import { supplyTree, trunkOf } from "../src/record/supply_tree";
import type { Head, JointRow, Record as MuscleRecord, Site } from "../src/wire";

const site = (landmark: string, bone: string, change: Partial<Site> = {}): Site => ({
  landmark,
  bone,
  label: `${landmark} of the ${bone}`,
  detail: "",
  tissue: "bone",
  status: "core",
  sources: [],
  ...change,
});

const joint = (name: string, parts: string[] = []): JointRow => ({ joint: name, parts, actions: [] });

const record = (heads: Head[], joints: JointRow[]) => ({ heads, joints }) as unknown as MuscleRecord;

/** The way as words: joints in angle brackets, marks as "bone: landmark (heads)". */
function words(one: MuscleRecord): string[] {
  return pathOf(one).stations.flatMap((station) =>
    station.kind === "joint"
      ? [`<${station.row.joint}>`]
      : station.marks.map((mark) => `${station.bone}: ${mark.site.landmark} (${mark.heads})`),
  );
}

const TRICEPS = record(
  [
    { name: "", origins: [], insertions: [site("olecranon", "ulna")] },
    { name: "long head", origins: [site("infraglenoid tubercle", "scapula")], insertions: [] },
    { name: "lateral head", origins: [site("posterior surface", "humerus")], insertions: [] },
  ],
  [joint("shoulder", ["long head"]), joint("elbow")],
);

describe("the path of a muscle", () => {
  it("lets each head begin before the first joint that it crosses (long head of triceps, common practice)", () => {
    expect(words(TRICEPS)).toEqual([
      "scapula: infraglenoid tubercle (0)",
      "<shoulder>",
      "humerus: posterior surface (1)",
      "<elbow>",
      "ulna: olecranon (0,1)",
    ]);
  });

  it("has one nameless head where the record names none", () => {
    const brachialis = record(
      [
        {
          name: "",
          origins: [site("anterior surface", "humerus")],
          insertions: [site("ulnar tuberosity", "ulna")],
        },
      ],
      [joint("elbow")],
    );
    expect(pathOf(brachialis).heads).toEqual([""]);
    expect(words(brachialis)).toEqual([
      "humerus: anterior surface (0)",
      "<elbow>",
      "ulna: ulnar tuberosity (0)",
    ]);
  });

  it("keeps what only some books have off the bones that nothing else is attached to", () => {
    const slip = site("anterior surface", "radius", { status: "minority" });
    const one = record(
      [{ name: "", origins: [site("shaft", "ulna"), slip], insertions: [] }],
      [joint("wrist")],
    );
    expect(words(one)).toEqual(["ulna: shaft (0)", "<wrist>"]);
    expect(pathOf(one).elsewhere.map((mark) => mark.site.bone)).toEqual(["radius"]);
  });

  it("shows a muscle that crosses no joint whole", () => {
    const one = record(
      [
        {
          name: "",
          origins: [site("fascia", "", { tissue: "soft" })],
          insertions: [site("skin", "", { tissue: "soft" })],
        },
      ],
      [],
    );
    expect(words(one)).toEqual([": fascia (0)", ": skin (0)"]);
  });
});

const measured = (
  kind: MeasuredStation["kind"],
  top: number,
  marks: MeasuredStation["marks"] = [],
): MeasuredStation => ({
  kind,
  top,
  bottom: top + 60,
  y: top + 10,
  marks,
});

describe("the figure", () => {
  const stations = [
    measured("plate", 0, [{ y: 30, end: "origin", heads: [0] }]),
    measured("joint", 80),
    measured("joint", 160),
    measured("long", 240, [{ y: 270, end: "insertion", heads: [0] }]),
  ];

  it("draws bones by their kind, and of what the muscle only passes no more than its way", () => {
    expect(boneShapes(stations, 300).map((shape) => shape.kind)).toEqual(["plate", "passed", "long"]);
    const outlines = boneShapes(stations, 300).map((shape) => outline(10, 30, shape));
    expect(new Set(outlines).size).toBe(3);
    expect(outlines[1]).toMatch(/^M20 [\d.]+V[\d.]+$/);
    expect(outlines.join("")).not.toContain("NaN");
    const [first, passed] = boneShapes(stations, 300);
    expect(first && passed && first.y1 < 90 && 90 < passed.y0).toBe(true);
  });

  it("draws a strand a head, and a slip to each further mark", () => {
    expect(strandsOf(stations, 1, frameOf(120))).toHaveLength(1);
    const more = [...stations, measured("long", 320, [{ y: 350, end: "insertion", heads: [0] }])];
    expect(strandsOf(more, 1, frameOf(120)).filter((strand) => strand.belly === "")).toHaveLength(1);
  });

  it("draws nothing it has no marks for, and never a broken number", () => {
    expect(strandsOf([measured("joint", 0)], 1, frameOf(120))).toEqual([]);
    const drawn = strandsOf(stations, 1, frameOf(72)).map(
      (strand) => strand.tendon + strand.belly + strand.fibres.join(""),
    );
    expect(drawn.join("")).not.toContain("NaN");
  });
});

describe("the kind of a bone", () => {
  it("is that of the textbook's classification", () => {
    // OpenStax Anatomy and Physiology 2e, section 6.2, from memory
    for (const name of ["Humerus", "Tibia", "Distal phalanges of the fingers"])
      expect(boneKind(name)).toBe("long");
    for (const name of ["Scapula", "Hip bone", "Patella", "Calcaneus", "Ribs"])
      expect(boneKind(name)).toBe("plate");
  });
});

describe("the supply", () => {
  it("merges what runs together and forks where it parts", () => {
    const lines = [
      { path: ["subclavian", "axillary", "posterior circumflex humeral"] },
      { path: ["subclavian", "axillary", "thoracoacromial"] },
      { path: ["subclavian", "axillary", "thoracoacromial", "deltoid branch"] },
    ];
    const [trunk, ...others] = supplyTree(lines);
    expect(others).toEqual([]);
    const { passed, reached } = trunkOf(trunk as NonNullable<typeof trunk>);
    expect([passed, reached.name]).toEqual([["subclavian"], "axillary"]);
    expect(
      reached.branches.map((branch) => [branch.name, branch.ends.length, branch.branches.length]),
    ).toEqual([
      ["posterior circumflex humeral", 1, 0],
      ["thoracoacromial", 1, 1],
    ]);
  });
});

describe("the record on the wall", () => {
  it("keeps what books agree on, in the fewest words", () => {
    const rare = site("labrum", "scapula", { status: "variant" });
    const full = {
      ...TRICEPS,
      heads: [
        {
          name: "clavicular part (anterior fibers)",
          origins: [site("acromion", "scapula"), rare],
          insertions: [],
        },
      ],
      joints: [joint("shoulder (glenohumeral) joint"), joint("wrist")],
      nerves: [],
      arteries: [],
      differ: [
        { about: "roots", text: "", sources: [] },
        { about: "roots", text: "", sources: [] },
      ],
    } as unknown as MuscleRecord;
    full.joints[0]?.actions.push({
      movement: "flexion",
      verb: "flexes",
      role: "prime",
      part: "",
      condition: "when supinated",
      status: "core",
      sources: [],
    });
    const brief = briefRecord(full);
    expect(brief.heads[0]?.name).toBe("clavicular part");
    expect(brief.heads[0]?.origins.map((one) => one.landmark)).toEqual(["acromion"]);
    expect(brief.joints.map((row) => row.joint)).toEqual(["shoulder joint"]);
    expect(brief.joints[0]?.actions[0]?.condition).toBe("");
    expect(differencesOf(full)).toEqual(["roots"]);
  });
});

describe("the layer in words", () => {
  it.each([
    ["superficial", "superficial layer"],
    ["fourth layer", "fourth layer"],
    ["muscular cone", "muscular cone"],
    ["", ""],
  ])("says %s as %s", (layer, text) => {
    expect(layerText(layer)).toBe(text);
  });
});
