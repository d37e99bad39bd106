import "../parts/buttons.css";
import type { OwnView } from "../wire";
import { countOf } from "../words/numbers";

/** The way from a finished review to what was missed in it. */
export function SecondLookLink({ own }: { own: OwnView }) {
  const missed = own.rounds.filter(({ verdict }) => MISSED.has(verdict)).length;
  return (
    <p>
      {missed > 0 ? (
        <a class="button button-main" href="/mine#/look/last">
          Second look: {countOf(missed, "item")}
        </a>
      ) : (
        <a href="/mine">Your own page: practise alone, and see what comes back when</a>
      )}
    </p>
  );
}

const MISSED: ReadonlySet<OwnView["rounds"][number]["verdict"]> = new Set(["wrong", "part", "none"]);
