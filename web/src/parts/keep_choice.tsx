import "./keep_choice.css";
import { useState } from "preact/hooks";
import { keepsResults, setKeepsResults } from "../line/own_key";

/** At the door: whether what one answers is to be kept, what that means, and how to refuse. */
export function KeepChoice() {
  const [keeps, setKeeps] = useState(keepsResults());
  const choose = (next: boolean) => {
    setKeepsResults(next);
    setKeeps(next);
  };
  return (
    <div class="keep_choice">
      <label class="keep_line">
        <input type="checkbox" checked={keeps} onChange={(event) => choose(event.currentTarget.checked)} />
        <span>Keep my results for a second look</span>
      </label>
      <p class="field_hint">
        Under an anonymous key in this browser. Take the tick away if you do not want that.{" "}
        <a href="/privacy">What is stored</a>
      </p>
    </div>
  );
}
