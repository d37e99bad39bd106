import type { Site } from "../wire";

type Status = Site["status"];

const WORD: Record<Status, string> = { core: "", variant: "variant", minority: "minority reading" };

/** Says in brackets that not all books, or not all bodies, have it so. */
export function StatusWord({ status }: { status: Status }) {
  return status === "core" ? null : <span class="status_word">({WORD[status]})</span>;
}

/** What is said beside the core, in one quiet line for each status. */
export function OtherReadings({ readings }: { readings: readonly { status: Status; text: string }[] }) {
  return (
    <>
      {(["variant", "minority"] as const).map((status) => {
        const texts = readings.filter((reading) => reading.status === status).map((reading) => reading.text);
        if (texts.length === 0) return null;
        return (
          <p key={status} class="readings">
            <span class="readings_word">{WORD[status]}:</span> {texts.join("; ")}
          </p>
        );
      })}
    </>
  );
}
