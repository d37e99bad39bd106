import type { Head, JointRow, Record as MuscleRecord, Site } from "../wire";

/** A place where strands of the muscle begin or end. */
export interface Mark {
  site: Site;
  end: "origin" | "insertion";
  /** Indexes of the heads concerned. */
  heads: number[];
}

/** All marks on one bone that are met at this point of the way. */
export interface BoneStation {
  kind: "bone";
  bone: string;
  soft: boolean;
  marks: Mark[];
}

/** A joint that is crossed. */
export interface JointStation {
  kind: "joint";
  row: JointRow;
}

export type Station = BoneStation | JointStation;

/** The way of a muscle from proximal to distal. */
export interface Path {
  /** Names of the heads; a single empty name for a muscle without heads. */
  heads: string[];
  stations: Station[];
  /** Attachments that only some books or bodies have, on bones where nothing else is attached. */
  elsewhere: Mark[];
}

/** Lays origins, joints and insertions out in the order in which the muscle meets them.
 *
 * A head lies between the joints it crosses: its origin just before the first, its insertion just
 * after the last. What a record gives for the whole muscle holds for every head without its own. */
export function pathOf(record: MuscleRecord): Path {
  const heads = namedHeads(record.heads);
  const slots: Mark[][] = Array.from({ length: record.joints.length + 1 }, () => []);
  heads.forEach((head, index) => {
    const [first, last] = span(head.name, record.joints);
    for (const site of head.origins) put(slots[first], site, "origin", index);
    for (const site of head.insertions) put(slots[last], site, "insertion", index);
  });
  const stations: Station[] = [];
  const elsewhere: Mark[] = [];
  slots.forEach((marks, index) => {
    for (const station of byBone(marks)) {
      if (station.marks.some((mark) => mark.site.status === "core")) stations.push(station);
      else elsewhere.push(...station.marks);
    }
    const row = record.joints[index];
    if (row) stations.push({ kind: "joint", row });
  });
  return { heads: heads.map((head) => head.name), stations, elsewhere };
}

/** The heads with their own names, each with the attachments that it shares with the whole muscle. */
function namedHeads(heads: readonly Head[]): Head[] {
  const whole = heads.filter((head) => head.name === "");
  const named = heads.filter((head) => head.name !== "");
  const origins = whole.flatMap((head) => head.origins);
  const insertions = whole.flatMap((head) => head.insertions);
  if (named.length === 0) return [{ name: "", origins, insertions }];
  return named.map((head) => ({
    name: head.name,
    origins: coreOf(head.origins).length
      ? [...head.origins, ...variantsOf(origins)]
      : [...origins, ...head.origins],
    insertions: coreOf(head.insertions).length
      ? [...head.insertions, ...variantsOf(insertions)]
      : [...insertions, ...head.insertions],
  }));
}

function coreOf(sites: readonly Site[]): Site[] {
  return sites.filter((site) => site.status === "core");
}

function variantsOf(sites: readonly Site[]): Site[] {
  return sites.filter((site) => site.status !== "core");
}

/** Slots of a head: before the first joint that it crosses and after the last. */
function span(head: string, joints: readonly JointRow[]): [number, number] {
  const crossed = joints.flatMap((row, index) =>
    head === "" || row.parts.length === 0 || row.parts.includes(head) ? [index] : [],
  );
  return [crossed[0] ?? 0, (crossed.at(-1) ?? joints.length - 1) + 1];
}

function put(marks: Mark[] | undefined, site: Site, end: Mark["end"], head: number): void {
  const same = marks?.find((mark) => mark.end === end && sameSite(mark.site, site));
  if (same) same.heads.push(head);
  else marks?.push({ site, end, heads: [head] });
}

function sameSite(one: Site, other: Site): boolean {
  return one.label === other.label && one.detail === other.detail && one.status === other.status;
}

/** Neighbouring marks on one bone share a station; what books agree on comes first in it. */
function byBone(marks: readonly Mark[]): BoneStation[] {
  const stations: BoneStation[] = [];
  for (const mark of marks) {
    const soft = mark.site.tissue === "soft";
    const known = stations.find(
      (one) => one.soft === soft && (soft || one.bone === mark.site.bone) && one.marks[0]?.end === mark.end,
    );
    if (known) known.marks.push(mark);
    else stations.push({ kind: "bone", bone: mark.site.bone, soft, marks: [mark] });
  }
  return stations.sort((a, b) => depth(a) - depth(b));
}

/** Soft tissue stands at the outer side, so that the bone borders on the joint. */
function depth(station: BoneStation): number {
  if (!station.soft) return 1;
  return station.marks[0]?.end === "origin" ? 0 : 2;
}
