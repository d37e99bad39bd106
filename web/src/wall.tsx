import "./style/page.css";
import { render } from "preact";
import { openLine } from "./line/line";
import { readPage } from "./line/page";
import { makeStore } from "./line/store";
import { makeAnnouncer } from "./parts/announcer";
import { restoreTheme } from "./parts/theme";
import { WallPage } from "./wall/wall_page";

const page = readPage();
const complaint = makeStore("");
restoreTheme();

const line = openLine(async (opened) => {
  const reply = await opened.say({ type: "watch_wall", door_code: page.doorCode });
  complaint.set(reply.result === "refused" ? (reply.text ?? "") : "");
});
render(
  <WallPage line={line} complaint={complaint} joinAddress={page.joinAddress} announcer={makeAnnouncer()} />,
  page.root,
);
