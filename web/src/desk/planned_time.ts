const MOMENT = new Intl.DateTimeFormat("en-GB", {
  weekday: "short",
  day: "numeric",
  month: "short",
  year: "numeric",
  hour: "2-digit",
  minute: "2-digit",
});

/** A moment (ms) in the time of this device, as people say it: "Wed, 3 Sept 2031, 12:00". */
export function momentText(ms: number): string {
  return MOMENT.format(new Date(ms));
}

/** A moment as a field for date and time wants it, in the time of this device; empty for none. */
export function fieldOf(ms: number | null | undefined): string {
  if (ms === null || ms === undefined) return "";
  const at = new Date(ms);
  const day = [at.getFullYear(), at.getMonth() + 1, at.getDate()].map((part) => two(part)).join("-");
  return `${day}T${two(at.getHours())}:${two(at.getMinutes())}`;
}

/** The moment that such a field holds; null if it holds none. */
export function momentOf(field: string): number | null {
  const at = new Date(field).getTime();
  return field === "" || Number.isNaN(at) ? null : at;
}

/** The time zone in which this device shows times. */
export function zoneHere(): string {
  return Intl.DateTimeFormat().resolvedOptions().timeZone;
}

function two(part: number): string {
  return String(part).padStart(2, "0");
}
