import { AnsweringAtBench } from "../bench/bench_answering";
import type { Line } from "../line/line";
import type { OwnView, PublicView } from "../wire";
import { Answering } from "./answering";
import type { HandIn } from "./hand_in";

/** The item at which the own bench now is, to be answered until the bell; or why there is none. */
export function AtStation(props: {
  view: PublicView;
  own: OwnView | null;
  hands: HandIn;
  line: Line;
  say: (text: string) => void;
}) {
  const { own, hands, line, say } = props;
  if (props.view.stations?.over)
    return (
      <Waiting
        title="All stations are done"
        then="Your host now shows each item with its result, for all benches together."
      />
    );
  const station = own?.station;
  if (!own || !station)
    return (
      <Waiting
        title="You join after the stations"
        then="When all benches have been everywhere, your host shows each item with its result."
      />
    );
  const { item } = station;
  const view = { ...props.view, asks_certainty: station.asks_certainty };
  const known = own.answer?.round === item.round ? own.answer : null;
  const at = { view, item, known, hands, say };
  if (view.benches?.answers && own.bench?.bench) {
    return <AnsweringAtBench key={item.round} {...at} bench={own.bench} line={line} />;
  }
  return <Answering key={item.round} {...at} />;
}

function Waiting({ title, then }: { title: string; then: string }) {
  return (
    <>
      <h1 class="stem" id="stem" tabIndex={-1}>
        {title}
      </h1>
      <p>{then}</p>
    </>
  );
}
