import "../parts/buttons.css";
import "../seat/join_form.css";
import "./group.css";
import { useEffect, useState } from "preact/hooks";
import { BenchField } from "../bench/bench_field";
import { useStore } from "../line/store";
import { type Announcer, LiveRegion } from "../parts/announcer";
import { KeepChoice } from "../parts/keep_choice";
import { Complaint, LineNotice } from "../parts/notice";
import { TimingField } from "../parts/timing_field";
import type { GroupSettings } from "../wire";
import { Besides, CourseField, ReadingField, RoundsField, WordField } from "./choice_fields";
import { type Choices, firstChoices, whatIsMissing } from "./choices";
import type { Opening } from "./opening";

/** Where a study group opens its room. */
export function GroupPage({ opening, announcer }: { opening: Opening; announcer: Announcer }) {
  const settings = useStore(opening.settings);
  const state = useStore(opening.line.state);
  const complaint = useStore(opening.complaint);
  useEffect(() => {
    if (complaint) announcer.say(complaint);
  }, [announcer, complaint]);
  return (
    <main class="group">
      <h1 class="door_title">Open a room for a study group</h1>
      <p class="door_text">
        There is no host: each round opens when all who are there are ready, closes when all have answered or
        the time is over, and its record stays until all have read it.
      </p>
      <LineNotice state={state} kept="" />
      {settings ? (
        <GroupForm opening={opening} settings={settings} complaint={complaint} announcer={announcer} />
      ) : (
        <Complaint text={complaint} />
      )}
      <p class="door_aside">
        <a href="/">I have a door code</a>
      </p>
      <LiveRegion announcer={announcer} />
    </main>
  );
}

function GroupForm(props: {
  opening: Opening;
  settings: GroupSettings;
  complaint: string;
  announcer: Announcer;
}) {
  const { opening, settings, announcer } = props;
  const [choices, setChoices] = useState(() => firstChoices(settings, opening.handle));
  const [missing, setMissing] = useState("");
  const busy = useStore(opening.busy);
  const open = (event: Event) => {
    event.preventDefault();
    const lacks = whatIsMissing(choices, settings);
    setMissing(lacks);
    if (lacks) announcer.say(lacks);
    else void opening.open(choices);
  };
  return (
    <form class="group_form" onSubmit={open} noValidate>
      <Fields choices={choices} onChoices={setChoices} settings={settings} />
      <End settings={settings} complaint={missing || props.complaint} busy={busy} />
    </form>
  );
}

function Fields(props: { choices: Choices; onChoices: (choices: Choices) => void; settings: GroupSettings }) {
  const { choices, onChoices, settings } = props;
  const field = { choices, onChoices };
  return (
    <>
      <CourseField {...field} settings={settings} />
      <RoundsField {...field} most={settings.most_rounds} />
      <TimingField
        value={choices}
        onTiming={(timing) => onChoices({ ...choices, ...timing })}
        unlimited="until all have answered"
        choiceClass="group_choice"
        lineClass="group_line"
        numberClass="group_number"
      />
      <ReadingField {...field} />
      <Besides {...field} />
      <BenchField
        play={choices.benches}
        onPlay={(benches) => onChoices({ ...choices, benches })}
        choiceClass="group_choice"
        lineClass="group_line"
      />
      <WordField
        {...field}
        name="title"
        label="Name of the evening"
        hint="may stay empty; everybody sees it"
        longest={120}
      />
      <WordField
        {...field}
        name="handle"
        label="Your handle"
        hint="any name; everybody may see it"
        longest={40}
      />
    </>
  );
}

function End({ settings, complaint, busy }: { settings: GroupSettings; complaint: string; busy: boolean }) {
  return (
    <div class="group_end">
      <KeepChoice />
      <Complaint text={complaint} />
      <button class="button button-main group_open" type="submit" disabled={busy}>
        {busy ? "Opening …" : "Open the room"}
      </button>
      <p class="field_hint">
        Up to {settings.most_players} players. The room ends by itself after {settings.hours} hours, or when
        nobody has been there for ten minutes.
      </p>
    </div>
  );
}
