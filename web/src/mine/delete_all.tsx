import { useEffect, useRef, useState } from "preact/hooks";
import { Complaint } from "../parts/notice";
import { forgetOnDevice, type OwnData } from "./own_data";

interface DeleteAllProps {
  data: OwnData;
  say: (text: string) => void;
  onForgotten?: (() => Promise<void>) | undefined;
}

/** Deletes everything under the key, on the server and on this device, after one question. */
export function DeleteAll({ data, say, onForgotten }: DeleteAllProps) {
  const [step, setStep] = useState<"closed" | "asking" | "busy" | "done">("closed");
  const [complaint, setComplaint] = useState("");
  const done = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    if (step === "done") done.current?.focus();
  }, [step]);
  const forget = async () => {
    setStep("busy");
    const got = await data.forget();
    setComplaint(got.kind === "problem" ? got.text : "");
    if (got.kind === "problem") {
      say(got.text);
      return setStep("asking");
    }
    forgetOnDevice(localStorage);
    await onForgotten?.();
    setStep("done");
  };
  if (step === "done") {
    return (
      <div class="key_part">
        <p ref={done} tabIndex={-1}>
          Everything is deleted, here and on the server. <a href="/">To the front page</a>
        </p>
      </div>
    );
  }
  return (
    <div class="key_part no-print">
      <p class="field_label">Delete everything</p>
      {step === "closed" ? (
        <p class="key_ways">
          <button class="button" type="button" onClick={() => setStep("asking")}>
            Delete everything …
          </button>
          <a href="/privacy">What is stored</a>
        </p>
      ) : (
        <Question busy={step === "busy"} onYes={() => void forget()} onNo={() => setStep("closed")} />
      )}
      <Complaint text={complaint} />
    </div>
  );
}

function Question({ busy, onYes, onNo }: { busy: boolean; onYes: () => void; onNo: () => void }) {
  const question = useRef<HTMLParagraphElement>(null);
  useEffect(() => question.current?.focus(), []);
  return (
    <>
      <p ref={question} tabIndex={-1}>
        This cannot be undone. Your second looks, your plan and your key are erased; in reviews your handle
        becomes "Former player", and what you chose stays as nobody's.
      </p>
      <p class="key_ways">
        <button class="button button-main" type="button" disabled={busy} onClick={onYes}>
          {busy ? "Deleting …" : "Yes, delete everything"}
        </button>
        <button class="button" type="button" disabled={busy} onClick={onNo}>
          Keep it
        </button>
      </p>
    </>
  );
}
