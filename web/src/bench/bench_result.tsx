import "./bench.css";
import type { BenchesFace, OwnBench, OwnView } from "../wire";
import { countOf, marksText, marksWord } from "../words/numbers";

/** After a round: what the bench handed in, beside one's own result. */
export function BenchResult({ bench }: { bench: OwnBench }) {
  if (bench.bench === "") return null;
  return (
    <p class="bench_note">
      Your bench,{" "}
      <b>
        <bdi>{bench.bench}</bdi>
      </b>
      : {resultText(bench)}
    </p>
  );
}

function resultText(bench: OwnBench): string {
  const soFar = `${marksText(bench.marks)} of ${bench.of} so far`;
  return bench.mark === null ? soFar : `${marksWord(bench.mark)} in this round, ${soFar}`;
}

/** At the end: the bench's total and place. */
export function BenchTotal({ own, benches }: { own: OwnView; benches: BenchesFace }) {
  const bench = own.bench;
  if (!bench || bench.bench === "") return null;
  return (
    <p class="bench_note">
      Your bench,{" "}
      <b>
        <bdi>{bench.bench}</bdi>
      </b>
      : {marksText(bench.marks)} of {countOf(bench.of, "mark")}
      {own.place !== null && `, place ${own.place} among ${countOf(benches.rows.length, "bench", "benches")}`}
    </p>
  );
}
