const DAY = new Intl.DateTimeFormat("en-GB", { weekday: "short", day: "numeric", month: "short" });
const DAY_AND_YEAR = new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "short", year: "numeric" });

/** A calendar day as the server writes it, "2031-11-08", as people say it: "Sat 8 Nov". */
export function dayText(date: string): string {
  const day = localDay(date);
  return day === null ? date : DAY.format(day).replace(",", "");
}

/** A moment (ms) as a day: "8 Nov 2031". */
export function dayOf(ms: number): string {
  return DAY_AND_YEAR.format(new Date(ms));
}

/** The day at noon, so that no time zone can turn it into its neighbour. */
function localDay(date: string): Date | null {
  const [year, month, day] = date.split("-").map(Number);
  return year && month && day ? new Date(year, month - 1, day, 12) : null;
}
