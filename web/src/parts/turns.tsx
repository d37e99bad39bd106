import "./rows.css";
import "./turns.css";
import type { ResultFace, SecondFace, TypedResult } from "../wire";
import { percent } from "../words/numbers";
import { TypedRows } from "./typed_rows";

export interface Share {
  share: number;
  count: number;
}

/** How often a row was chosen first, and again after talking: each as word, figure and bar of its own kind. */
export function RowTurns({ first, second }: { first: Share; second: Share | undefined }) {
  return (
    <>
      <span class="row_turns">
        <Turn word="first" of={first} />
        <Turn word="again" of={second ?? { share: 0, count: 0 }} />
      </span>
      <span
        class="row_bar row_bar-first"
        aria-hidden="true"
        style={{ transform: `scaleX(${first.share})` }}
      />
      <span class="row_bar" aria-hidden="true" style={{ transform: `scaleX(${second?.share ?? 0})` }} />
    </>
  );
}

function Turn({ word, of }: { word: string; of: Share }) {
  return (
    <span class="row_turn">
      <span class="row_turn_word">{word} </span>
      <span>{percent(of.share)}</span>
      <span class="row_count">
        <span class="unseen">, </span>
        {of.count}
      </span>
    </span>
  );
}

/** What the two bars are, and how many were right before and after talking. */
export function TurnsLine({ result, second }: { result: ResultFace; second: SecondFace }) {
  return (
    <p class="turns">
      <span class="turns_turn">
        <span class="turns_sample" aria-hidden="true">
          <span class="row_bar row_bar-first" style={{ bottom: 0 }} />
        </span>
        <span>
          first: <b>{rightText(second.first_right, result.answered)}</b>
        </span>
      </span>
      <span class="turns_turn">
        <span class="turns_sample" aria-hidden="true">
          <span class="row_bar" />
        </span>
        <span>
          again: <b>{rightText(second.right, second.answered)}</b>
        </span>
      </span>
    </p>
  );
}

function rightText(right: number, of: number): string {
  return of === 0 ? "nobody answered" : `${right} of ${of} right, ${percent(right / of)}`;
}

/** Typed answers; where there are second ones, one list after the other under its heading. */
export function TypedTwice(props: {
  first: readonly TypedResult[];
  second: readonly TypedResult[] | undefined;
}) {
  if (props.first.length === 0 && !props.second?.length) return null;
  if (!props.second) return <TypedRows typed={props.first} />;
  return (
    <>
      <p class="turns_heading">First</p>
      <TypedRows typed={props.first} />
      <p class="turns_heading">Again, after talking</p>
      <TypedRows typed={props.second} />
    </>
  );
}
