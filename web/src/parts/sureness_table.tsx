import "./certainty.css";
import type { Sureness } from "../wire";
import { CERTAINTY_TABLE, signed } from "../words/certainty";
import { percent } from "../words/numbers";

/** Whether certainty was deserved: how often each of 1, 2, 3 was said, and how often it was right. */
export function SurenessTable({
  sureness,
  whose,
  narrow = false,
}: {
  sureness: Sureness;
  whose: string;
  narrow?: boolean;
}) {
  return (
    <table class="sureness">
      <caption class="unseen">{whose}: certainty and what came of it</caption>
      <thead>
        <tr>
          <th scope="col">certainty</th>
          <th scope="col">said</th>
          <th scope="col">right</th>
          {!narrow && <th scope="col">meant</th>}
        </tr>
      </thead>
      <tbody>
        {sureness.levels.map((level) => (
          <tr key={level.certainty}>
            <th scope="row">{level.certainty}</th>
            <td>{level.answers}</td>
            <td>{level.answers === 0 ? "–" : `${level.right} (${percent(level.right / level.answers)})`}</td>
            {!narrow && <td>{CERTAINTY_TABLE.find((row) => row.certainty === level.certainty)?.best}</td>}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The certainty marks together, in words. */
export function surenessWords(sureness: Sureness): string {
  return `${signed(sureness.marks)} in ${sureness.answers === 1 ? "1 answer" : `${sureness.answers} answers`}`;
}
