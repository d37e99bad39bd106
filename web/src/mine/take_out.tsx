import { useState } from "preact/hooks";
import { Complaint } from "../parts/notice";
import type { OwnData } from "./own_data";
import { saveFile } from "./save_file";

/** Everything that is kept, as a file: one press each. */
export function TakeOut({ data, say }: { data: OwnData; say: (text: string) => void }) {
  const [complaint, setComplaint] = useState("");
  const take = async (kind: "json" | "csv") => {
    const got = await data.file(kind);
    setComplaint(got.kind === "problem" ? got.text : "");
    say(got.kind === "problem" ? got.text : "The file is saved.");
    if (got.kind === "done") saveFile(got.value, `quizroom-history.${kind}`);
  };
  return (
    <div class="key_part no-print">
      <p class="field_label">Take it away</p>
      <p class="key_ways">
        <button class="button" type="button" onClick={() => void take("json")}>
          Everything, as JSON
        </button>
        <button class="button" type="button" onClick={() => void take("csv")}>
          Answers in reviews, as a table (CSV)
        </button>
      </p>
      <Complaint text={complaint} />
    </div>
  );
}
