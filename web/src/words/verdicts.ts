import type { OwnResult, TypedResult } from "../wire";

type Verdict = OwnResult["verdict"];

/** The word of a verdict; a mark always stands beside it, never a colour alone. */
export const VERDICT_WORD: Record<Verdict, string> = {
  right: "right",
  part: "part right",
  wrong: "wrong",
  none: "no answer",
  struck: "struck",
  "not counted": "not counted",
};

export const VERDICT_MARK: Record<Verdict, string> = {
  right: "✓",
  part: "◐",
  wrong: "✕",
  none: "–",
  struck: "⊘",
  "not counted": "–",
};

/** What follows the word, where the word alone would leave a question. */
export const VERDICT_NOTE: Partial<Record<Verdict, string>> = {
  none: "Nothing was handed in before the round closed.",
  struck: "The host has taken this item out of all marks.",
  "not counted": "You took your seat after this round was opened.",
};

/** Stands in place of everything that a held result would tell. */
export const HELD = "The result comes when your host shows it.";

export const TYPED_WORD: Record<TypedResult["verdict"], string> = {
  right: "right",
  half: "half a mark",
  wrong: "wrong",
  doubtful: "doubtful",
};

export const TYPED_MARK: Record<TypedResult["verdict"], string> = {
  right: "✓",
  half: "◐",
  wrong: "✕",
  doubtful: "?",
};

/** Who wrote an item that was not dealt from the content. */
export const BY_HOST = "Written by your host.";
