import "../parts/buttons.css";
import "./bench.css";
import { useState } from "preact/hooks";
import type { Line } from "../line/line";
import { Complaint } from "../parts/notice";
import { useOrders } from "../seat/group_orders";
import type { BenchesFace, OwnBench } from "../wire";
import { countOf } from "../words/numbers";

const LONGEST_BENCH = 24;

interface TakeProps {
  benches: BenchesFace;
  own: OwnBench;
  line: Line;
}

/** Before the first round: where one sits, and another bench to take where they are not drawn. */
export function TakeBench({ benches, own, line }: TakeProps) {
  return (
    <section class="bench" aria-labelledby="bench">
      <h2 class="bench_heading" id="bench">
        {own.bench ? (
          <>
            Your bench:{" "}
            <b>
              <bdi>{own.bench}</bdi>
            </b>{" "}
            ({countOf(own.members, "player")})
          </>
        ) : (
          noBenchText(benches)
        )}
      </h2>
      {benches.how === "choice" && <BenchWays benches={benches} own={own} line={line} />}
    </section>
  );
}

function noBenchText(benches: BenchesFace): string {
  return benches.how === "drawn" ? "Benches are drawn before the first round." : "Take a bench";
}

function BenchWays({ benches, own, line }: TakeProps) {
  const orders = useOrders(line);
  const [name, setName] = useState("");
  const take = (bench: string) => orders.give({ type: "take_bench", bench });
  const found = async (event: Event) => {
    event.preventDefault();
    if (name.trim() !== "" && (await take(name))) setName("");
  };
  return (
    <>
      <ul class="bench_list">
        {benches.rows
          .filter((row) => row.bench !== own.bench)
          .map((row) => (
            <li key={row.bench}>
              <button
                class="button"
                type="button"
                disabled={orders.waiting}
                onClick={() => void take(row.bench)}
              >
                <bdi>{row.bench}</bdi> ({row.players})
              </button>
            </li>
          ))}
      </ul>
      <form class="bench_new" onSubmit={(event) => void found(event)}>
        <input
          class="field_input"
          aria-label="Name of a bench"
          placeholder="name of a bench"
          value={name}
          maxLength={LONGEST_BENCH}
          onInput={(event) => setName(event.currentTarget.value)}
          spellcheck={false}
        />
        <button class="button" type="submit" disabled={orders.waiting}>
          Take it
        </button>
      </form>
      <Complaint text={orders.complaint} />
    </>
  );
}
