import "./take_file.css";
import type { DeskView } from "../wire";

/** The review as a file to keep or hand on: with or without what happened in it. */
export function SaveFile({ view }: { view: DeskView }) {
  const address = `/desk/review-file/${encodeURIComponent(view.room)}`;
  return (
    <details class="save_file">
      <summary>Save as a file</summary>
      <p>
        <a href={address} download="">
          Plan, items and pictures
        </a>
      </p>
      {view.public.phase === "finished" && (
        <p>
          <a href={`${address}?happened=1`} download="">
            With what happened
          </a>
          : answers under handles, strikes, other keys
        </p>
      )}
    </details>
  );
}
