import type { Finding, OwnItem, OwnOption, Picture } from "../wire";

/** An item as the form holds it: every field is there. */
export type Own = Required<Omit<OwnItem, "options" | "picture">> & {
  options: Required<OwnOption>[];
  picture: Required<Picture> | null;
};

const FEWEST_ROWS = 4;
export const MOST_ROWS = 10;
const EMPTY: Required<OwnOption> = { text: "", reason: "", is_key: false };

/** A new item, with empty rows to write into. */
export function blankItem(): Own {
  return {
    format: "one_best",
    stem: "",
    options: [EMPTY, EMPTY, EMPTY, EMPTY],
    accepted: [],
    spelling: "accept",
    why: "",
    family: "own",
    region: "",
    muscles: [],
    picture: null,
    seconds: null,
    keeps_order: false,
    taken: [],
  };
}

/** An item as it came from the server, with as many rows as a form begins with. */
export function forForm(sent: OwnItem): Own {
  const own = sent as Own; // the server leaves no field out
  const missing = Math.max(0, FEWEST_ROWS - own.options.length);
  return { ...own, options: [...own.options, ...Array.from({ length: missing }, () => EMPTY)] };
}

export function withRow(own: Own): Own {
  return { ...own, options: [...own.options, EMPTY] };
}

/** What is sent: rows in which nothing was written are left out. */
export function forServer(own: Own): Own {
  return { ...own, options: own.options.filter(isWritten) };
}

/** The findings with their fields named as the form counts its rows. */
export function atRows(own: Own, findings: readonly Finding[]): Finding[] {
  const rows = own.options.flatMap((option, row) => (isWritten(option) ? [row] : []));
  return findings.map((one) => {
    const [head, place, part] = one.field.split(".");
    if (head !== "options" || part === undefined) return one;
    return { ...one, field: `options.${rows[Number(place)]}.${part}` };
  });
}

/** The key is this row; with one best answer no other is. */
export function withKey(own: Own, row: number, on: boolean): Own {
  const single = own.format === "one_best";
  return {
    ...own,
    options: own.options.map((option, at) => ({
      ...option,
      is_key: at === row ? on : single ? false : option.is_key,
    })),
  };
}

export function withOption(own: Own, row: number, change: Partial<OwnOption>): Own {
  return {
    ...own,
    options: own.options.map((option, at) => (at === row ? { ...option, ...change } : option)),
  };
}

/** One row up or down. */
export function moved(own: Own, row: number, by: -1 | 1): Own {
  const options = [...own.options];
  const [one] = options.splice(row, 1);
  if (one) options.splice(row + by, 0, one);
  return { ...own, options };
}

/** One best answer has one key: of several only the first stays marked. */
export function withFormat(own: Own, format: Own["format"]): Own {
  const first = own.options.findIndex((option) => option.is_key);
  const options = own.options.map((option, row) => ({
    ...option,
    is_key: option.is_key && (format !== "one_best" || row === first),
  }));
  return { ...own, format, options };
}

/** How many things keep the item out of reviews. */
export function toMend(findings: readonly Finding[]): number {
  return findings.filter((one) => one.error || !one.taken).length;
}

function isWritten(option: Required<OwnOption>): boolean {
  return option.text.trim() !== "" || option.reason.trim() !== "" || option.is_key;
}
