import { useEffect, useRef, useState } from "preact/hooks";
import type { Announcer } from "../parts/announcer";
import type { Finding, OwnItemFace, OwnPreview } from "../wire";
import { ask } from "./api";
import { draftBox } from "./draft_box";
import { atRows, blankItem, forForm, forServer, type Own } from "./written";

const PAUSE_MS = 500;
const NEW = "new";

/** An item being written, and what the server says of it. */
export interface Writing {
  own: Own;
  findings: Finding[];
  preview: OwnPreview | null;
  /** Fields in which something was written since the item was opened. */
  touched: ReadonlySet<string>;
  busy: boolean;
  saved: boolean;
  problem: string;
  /** Whether it began with what had been written and not saved. */
  restored: boolean;
  change: (own: Own) => void;
  take: (rule: string, taken: boolean) => void;
  save: () => Promise<void>;
  discard: () => void;
}

export function useWriting(
  face: OwnItemFace | null,
  onSaved: (face: OwnItemFace) => void,
  announcer: Announcer,
): Writing {
  const id = face?.id ?? NEW;
  const kept = face ? forForm(face.own) : blankItem();
  const waiting = useRef(draftBox.find(id));
  const [own, setOwn] = useState<Own>(waiting.current ?? kept);
  const [touched, setTouched] = useState<ReadonlySet<string>>(new Set());
  const [state, setState] = useState({ busy: false, saved: false, problem: "" });
  const [restored, setRestored] = useState(waiting.current !== null);
  const checked = useChecked(own, face);
  const change = (next: Own) => {
    setTouched(new Set([...touched, ...changedFields(own, next)]));
    setState({ busy: false, saved: false, problem: "" });
    draftBox.keep(id, next);
    setOwn(next);
  };
  const save = async () => {
    setState({ busy: true, saved: false, problem: "" });
    const got = face
      ? await ask<OwnItemFace>("PUT", `/desk/own/items/${face.id}`, forServer(own))
      : await ask<OwnItemFace>("POST", "/desk/own/items", forServer(own));
    setState({ busy: false, saved: got.value !== null, problem: got.problem });
    announcer.say(got.problem || "Saved.");
    if (!got.value) return;
    draftBox.drop(id);
    setRestored(false);
    onSaved(got.value);
  };
  return {
    own,
    touched,
    restored,
    change,
    save,
    ...state,
    findings: atRows(own, checked.findings),
    preview: checked.preview ?? null,
    take: (rule, taken) =>
      change({ ...own, taken: taken ? [...own.taken, rule] : own.taken.filter((one) => one !== rule) }),
    discard: () => {
      draftBox.drop(id);
      setOwn(kept);
      setRestored(false);
    },
  };
}

/** What the server says of the item as it is written, a moment after each change. */
function useChecked(own: Own, face: OwnItemFace | null): Pick<OwnItemFace, "findings" | "preview"> {
  const [checked, setChecked] = useState<Pick<OwnItemFace, "findings" | "preview">>(
    face ?? { findings: [], preview: null },
  );
  useEffect(() => {
    let isWanted = true;
    const look = setTimeout(async () => {
      const got = await ask<OwnItemFace>("POST", "/desk/own/check", forServer(own));
      if (isWanted && got.value) setChecked(got.value);
    }, PAUSE_MS);
    return () => {
      isWanted = false;
      clearTimeout(look);
    };
  }, [own]);
  return checked;
}

/** Where two states of an item differ, by the names that findings use. */
function changedFields(before: Own, after: Own): string[] {
  const options = after.options.flatMap((option, row) => {
    const was = before.options[row];
    const text = option.text !== was?.text ? [`options.${row}.text`] : [];
    const reason = option.reason !== was?.reason ? [`options.${row}.reason`] : [];
    return [...text, ...reason, ...(option.is_key !== was?.is_key ? ["key"] : [])];
  });
  const plain = (["stem", "accepted", "why", "muscles", "seconds"] as const).filter(
    (name) => JSON.stringify(before[name]) !== JSON.stringify(after[name]),
  );
  const picture = before.picture?.alt !== after.picture?.alt ? ["picture.alt"] : [];
  return [...options, ...plain, ...picture, ...(before.format !== after.format ? ["key", "options"] : [])];
}
