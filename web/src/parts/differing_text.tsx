import type { Stretch } from "../words/differing";

/** An option's text with what tells it from the others set bold. */
export function DifferingText({ parts }: { parts: readonly Stretch[] }) {
  return (
    <>
      {parts.map((part, index) =>
        // biome-ignore lint/suspicious/noArrayIndexKey: the stretches of a text never change places
        part.differs ? <b key={index}>{part.text}</b> : <span key={index}>{part.text}</span>,
      )}
    </>
  );
}
