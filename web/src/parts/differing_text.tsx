import type { Stretch } from "../words/differing";
import { breakable } from "../words/word_parts";

/** An option's text with what tells it from the others set bold. */
export function DifferingText({ parts }: { parts: readonly Stretch[] }) {
  return (
    <>
      {parts.map((part, index) =>
        part.differs ? (
          <b key={index}>{breakable(part.text)}</b>
        ) : (
          <span key={index}>{breakable(part.text)}</span>
        ),
      )}
    </>
  );
}
