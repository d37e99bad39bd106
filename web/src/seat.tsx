import "./style/page.css";
import { render } from "preact";
import { tidyDoorCode } from "./line/memory";
import { readPage } from "./line/page";
import { makeAnnouncer } from "./parts/announcer";
import { restoreTheme } from "./parts/theme";
import { draftText } from "./seat/draft";
import { SeatPage } from "./seat/seat_page";
import { startSession } from "./seat/session";

restoreTheme();
const page = readPage();
const announcer = makeAnnouncer();
const session = startSession(tidyDoorCode(page.doorCode), (answer) =>
  announcer.say(`Answer received: ${draftText({ choice: answer.choice ?? [], typed: answer.typed ?? [] })}.`),
);
render(<SeatPage session={session} announcer={announcer} />, page.root);
