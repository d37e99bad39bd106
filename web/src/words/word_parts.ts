const PARTS = [
  "metacarpo",
  "metatarso",
  "sterno",
  "cleido",
  "brachio",
  "coraco",
  "acromio",
  "thoraco",
  "temporo",
  "musculo",
  "inter",
  "supra",
  "infra",
  "semi",
];
const LONG = 17;
const AFTER_PART = new RegExp(`(${PARTS.join("|")})(?=\\p{L}{5,})`, "giu");

/** The text with soft hyphens between the parts of very long words, where a narrow line may break them. */
export function breakable(text: string): string {
  return text.replace(/[\p{L}]+/gu, (word) =>
    word.length < LONG ? word : word.replace(AFTER_PART, "$1\u00ad"),
  );
}
