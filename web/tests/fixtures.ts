import type { ClockFace, ItemFace, OwnView, PublicView, ResultFace } from "../src/wire";

const ITEM: ItemFace = {
  round: 3,
  family: "nerve",
  format: "one_best",
  stem: "Which nerve supplies the coracobrachialis?",
  options: [
    { letter: "A", text: "axillary nerve" },
    { letter: "B", text: "musculocutaneous nerve" },
    { letter: "C", text: "median nerve" },
  ],
  pick: 1,
  stems: [],
  warm_up: false,
};

const CLOCK: ClockFace = { limit_ms: 45_000, closes_at: 1_000_045_000, left_ms: null, paused: false };

const RESULT: ResultFace = {
  options: ITEM.options.map((option, n) => ({
    ...option,
    is_key: n === 1,
    count: [4, 18, 2][n] ?? 0,
    share: ([4, 18, 2][n] ?? 0) / 24,
    reason: null,
  })),
  rows: [],
  typed: [],
  key_text: ["musculocutaneous nerve"],
  why: null,
  answered: 24,
  of: 24,
  mean_mark: 0.75,
  struck: false,
  rekeyed: "",
};

/** A public view of an open round, changed where a test says so. */
export function publicView(change: Partial<PublicView>): PublicView {
  return {
    version: 9,
    now: 1_000_000_000,
    phase: "answering",
    title: "Arm and forearm",
    course: "HHC-KN 232 Muscles and Movement",
    door_code: "KPTWX",
    players: 24,
    answered: 0,
    round: 3,
    rounds: 10,
    item: ITEM,
    asks_certainty: false,
    clock: CLOCK,
    result: null,
    records: [],
    waiting: [],
    standings: null,
    cautions: [],
    group: null,
    benches: null,
    ...change,
  };
}

export function closedView(change: Partial<PublicView>): PublicView {
  return publicView({ version: 40, phase: "closed", answered: 24, clock: null, result: RESULT, ...change });
}

export function ownView(change: Partial<OwnView>): OwnView {
  return {
    version: 9,
    now: 1_000_000_000,
    player: "p1",
    handle: "Teal Talus",
    removed: false,
    from_round: 1,
    round: 3,
    answer: null,
    result: null,
    marks: 2,
    of: 2,
    rounds: [],
    place: null,
    group: null,
    bench: null,
    flag: null,
    flags: [],
    factor_percent: 100,
    factor_counts: false,
    clock: null,
    clock_again: false,
    kept: false,
    ...change,
  };
}
