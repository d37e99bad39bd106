import "./style/page.css";
import "./parts/buttons.css";
import "./style/atlas.css";
import { render } from "preact";
import { restoreTheme } from "./parts/theme";
import { RecordPlate } from "./record/record_plate";
import type { Record as MuscleRecord } from "./wire";

/** The atlas works as the server wrote it; where scripts run, the record becomes the drawn plate of the wall. */
async function drawPlate(page: HTMLElement, address: string): Promise<void> {
  const answer = await fetch(address);
  if (!answer.ok) return;
  const record = (await answer.json()) as MuscleRecord;
  page.replaceChildren();
  render(
    <>
      <h1 class="unseen">Record of {record.name}</h1>
      <RecordPlate record={record} />
    </>,
    page,
  );
}

restoreTheme();
const page = document.getElementById("page");
if (page?.dataset.record) void drawPlate(page, page.dataset.record);
