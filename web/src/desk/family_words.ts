import type { DeskItem, DeskView } from "../wire";

type Family = DeskItem["family"];

const FAMILY_WORD: Record<Family, string> = {
  origin: "origin",
  insertion: "insertion",
  action: "action",
  prime_mover: "prime mover",
  joint: "joint crossed",
  nerve: "nerve",
  root: "root",
  artery: "artery",
  compartment: "compartment",
  set: "set",
  look_alike: "look-alike",
  odd_one_out: "odd one out",
  antagonist: "antagonist",
  name: "name",
  lesion: "lesion",
  two_step: "two steps",
  ordering: "ordering",
  matching: "matching",
  own: "your own",
};

/** The family's heading as anatomists say it; an unknown one is shown as it is. */
export function familyWord(family: string): string {
  return FAMILY_WORD[family as Family] ?? family.replaceAll("_", " ");
}

const FORMAT_WORD: Record<DeskItem["format"], string> = {
  one_best: "one best answer",
  pick_n: "pick",
  typed: "typed",
  free_list: "typed list",
  ordering: "put in order",
  matching: "match rows",
};

export function formatWord(item: DeskItem): string {
  return item.format === "pick_n" ? `pick ${item.pick}` : FORMAT_WORD[item.format];
}

const SOURCE_WORD: Record<DeskItem["options"][number]["source"], string> = {
  key: "key",
  class_error: "error of a class",
  look_alike: "look-alike",
  same_compartment: "same compartment",
  neighbouring_landmark: "neighbouring landmark",
  homologous_bone: "like landmark, other bone",
  sibling_nerve: "sibling nerve",
  sibling_artery: "sibling artery",
  antagonist: "antagonist",
  same_joint: "same joint",
  other_joint: "other joint",
  serial_homologue: "hand or foot",
  other_level: "other level",
  neighbouring_segment: "segment nearby",
  same_region: "same region",
  own: "",
};

/** Where a wrong option was taken from. */
export function sourceWord(source: DeskItem["options"][number]["source"]): string {
  return SOURCE_WORD[source];
}

export const PHASE_WORD: Record<DeskView["public"]["phase"], string> = {
  preparing: "being prepared",
  gathering: "door open",
  stations: "at stations",
  answering: "round open",
  closed: "round closed",
  talking: "neighbours talk",
  "answering again": "answering again",
  explained: "record shown",
  finished: "finished",
};
