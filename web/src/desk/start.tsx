import "../parts/buttons.css";
import "./start.css";
import { useEffect, useState } from "preact/hooks";
import { BenchField } from "../bench/bench_field";
import { keepingHere } from "../line/page";
import { useStore } from "../line/store";
import { Complaint, LineNotice } from "../parts/notice";
import { ViewMenu } from "../parts/view_menu";
import type { DeskSettings } from "../wire";
import { choiceOf, roundsOf, whatIsWrongIn } from "./blueprint";
import { BlueprintField, cellsOf, type Filled } from "./blueprint_field";
import { CreditField } from "./credit_field";
import { firstPlan, MOST_ROUNDS, type Plan, whatIsWrong } from "./plan";
import { CourseChoice, FamilyChoice, MoreChoice, TimingChoice, TitleAndRounds } from "./plan_fields";
import { ReviewList } from "./review_list";
import type { DeskSession } from "./session";
import { TakeFile } from "./take_file";

/** The desk before a review is on it: lay a new one out, or go on with another. */
export function Start({ session }: { session: DeskSession }) {
  const settings = useStore(session.settings);
  const reviews = useStore(session.reviews);
  const inAll = useStore(session.reviewsInAll);
  const complaint = useStore(session.complaint);
  const state = useStore(session.line.state);
  const owns = settings?.host?.role !== "assistant";
  return (
    <main class="start">
      <header class="start_top">
        <h1 class="start_title">Desk</h1>
        <div class="start_private">
          <p>
            Private: do not mirror this page. The wall has a page of its own. {keepingHere()}{" "}
            <a href="/privacy">What is stored</a>
          </p>
          {settings?.host && <Ways host={settings.host} />}
        </div>
        <ViewMenu keys="D for light or dark" acts={{}} />
      </header>
      <LineNotice state={state} kept="" />
      {settings === null ? (
        <p class="waiting">{complaint || "Reading the course lists …"}</p>
      ) : (
        <div class={owns ? "start_body" : "start_body start_body-alone"}>
          {owns && <PlanForm session={session} settings={settings} complaint={complaint} />}
          <div class="start_beside">
            <ReviewList
              reviews={reviews}
              inAll={inAll}
              onOlder={session.fetchOlder}
              owns={owns}
              onOpen={(room) => void session.open(room)}
              onChange={session.change}
            />
            {owns && <TakeFile onTaken={(room) => void session.open(room)} />}
          </div>
        </div>
      )}
    </main>
  );
}

/** Who sits here, and the ways to the pages beside the desk; an assistant is told whose reviews these are. */
function Ways({ host }: { host: NonNullable<DeskSettings["host"]> }) {
  const helps = host.role === "assistant";
  return (
    <nav class="start_ways" aria-label="Pages beside the desk">
      <b>{helps ? `${host.name}, helping ${host.helps}` : host.name}</b>
      {!helps && <a href="/desk/items">Own items</a>}
      {!helps && <a href="/desk/hosts">Hosts</a>}
      <a href="/desk/account">Your account</a>
      <a href="/desk/hand-over">Hand over or close the desk</a>
    </nav>
  );
}

function PlanForm(props: { session: DeskSession; settings: DeskSettings; complaint: string }) {
  const { session, settings } = props;
  const [plan, setPlan] = useState(() => firstPlan(settings));
  const [filled, setFilled] = useState<Filled | null>(null);
  const [missing, setMissing] = useState("");
  const [busy, setBusy] = useState(false);
  useEffect(() => setMissing(""), [plan, filled]);
  const deal = async (event: Event) => {
    event.preventDefault();
    const wrong = whatIsMissing(plan, filled);
    setMissing(wrong);
    if (wrong !== "") return;
    setBusy(true);
    await session.prepare(orderOf(plan, filled));
    setBusy(false);
  };
  const total = filled && roundsOf(filled.draft, cellsOf(filled, plan));
  return (
    <form class="plan" onSubmit={deal} noValidate>
      <h2 class="start_heading">A new review</h2>
      <TitleAndRounds plan={plan} onPlan={setPlan} total={total} />
      <CourseChoice plan={plan} settings={settings} onPlan={setPlan} />
      <FamilyChoice plan={plan} settings={settings} onPlan={setPlan} />
      <BlueprintField plan={plan} filled={filled} onFilled={setFilled} />
      <TimingChoice plan={plan} onPlan={setPlan} />
      <MoreChoice plan={plan} onPlan={setPlan} />
      <BenchField
        withStations
        play={plan.benches}
        onPlay={(benches) => setPlan({ ...plan, benches })}
        choiceClass="choice plan_played"
        lineClass="choice_line"
      />
      <CreditField roster={plan.roster} onRoster={(roster) => setPlan({ ...plan, roster })} />
      <div class="plan_end">
        <Complaint text={missing || props.complaint} />
        <button class="button button-main plan_deal" type="submit" disabled={busy}>
          {busy ? "Dealing …" : "Deal the items"}
        </button>
      </div>
    </form>
  );
}

function whatIsMissing(plan: Plan, filled: Filled | null): string {
  if (filled === null) return whatIsWrong(plan);
  if (filled.grid === null) return "The grid of the blueprint is still being counted.";
  return (
    whatIsWrong({ ...plan, rounds: 1 }) || whatIsWrongIn(filled.draft, cellsOf(filled, plan), MOST_ROUNDS)
  );
}

function orderOf(plan: Plan, filled: Filled | null): Parameters<DeskSession["prepare"]>[0] {
  return {
    ...plan,
    type: "prepare_review",
    families: [...plan.families],
    title: plan.title.trim(),
    ...(filled && {
      rounds: roundsOf(filled.draft, cellsOf(filled, plan)),
      blueprint: choiceOf(filled.draft, cellsOf(filled, plan)),
    }),
  };
}
