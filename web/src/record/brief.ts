import type { JointRow, Record as MuscleRecord } from "../wire";

/** The layer of a muscle in words: most are an adjective, some say it all. */
export function layerText(layer: string): string {
  return layer === "" || /layer|cone/.test(layer) ? layer : `${layer} layer`;
}

/** The record as it can be read from the back row: what books agree on, in the fewest words. */
export function briefRecord(record: MuscleRecord): MuscleRecord {
  const core = <T extends { status: string }>(lines: readonly T[]) =>
    lines.filter((line) => line.status === "core");
  const sites = <T extends { status: string; detail: string }>(lines: readonly T[]) =>
    core(lines).map((site) => ({ ...site, detail: "" }));
  return {
    ...record,
    names: [],
    heads: record.heads.map((head) => ({
      ...head,
      name: shortName(head.name),
      origins: sites(head.origins),
      insertions: sites(head.insertions),
    })),
    joints: record.joints.map(briefJoint).filter((row) => row.actions.length > 0),
    nerves: core(record.nerves).map((nerve) => ({
      ...nerve,
      path: [nerve.nerve],
      part: shortName(nerve.part),
      branch: "",
    })),
    arteries: core(record.arteries).map((artery) => ({
      ...artery,
      path: [artery.artery],
      part: "",
      branch: "",
    })),
    notes: [],
    sources: [],
    differ: [],
  };
}

function briefJoint(row: JointRow): JointRow {
  const actions = row.actions
    .filter((action) => action.status === "core")
    .map((action) => ({ ...action, part: shortName(action.part), condition: "" }));
  return { ...row, joint: shortName(row.joint), parts: row.parts.map(shortName), actions };
}

/** A part's name without what stands in brackets: "clavicular part (anterior fibers)". */
function shortName(name: string): string {
  return name.replace(/\s*\([^)]*\)/g, "");
}

/** What books differ on, as headings alone. */
export function differencesOf(record: MuscleRecord): string[] {
  return [...new Set(record.differ.map((line) => line.about))];
}
