import "./style/page.css";
import { render } from "preact";
import { readPage } from "./line/page";
import { makeMineApi } from "./mine/api";
import { keptPages } from "./mine/kept_pages";
import { ownKey } from "./mine/key_for_now";
import { lastingDrawer, makeLookBox } from "./mine/look_box";
import { MinePage } from "./mine/mine_page";
import { makeMineSession } from "./mine/session";
import { keepPageOnDevice, sendWhenPossible } from "./mine/staying";
import { makeAnnouncer } from "./parts/announcer";
import { restoreTheme } from "./parts/theme";

const KEPT_MS = 30 * 24 * 3_600_000;

restoreTheme();
const page = readPage();
const key = ownKey();
const player = key.slice(0, 8);
const box = makeLookBox(lastingDrawer(), player);
box.tidy(Date.now() - KEPT_MS);
const session = makeMineSession(makeMineApi(key, keptPages(player)), box);
sendWhenPossible(session);
keepPageOnDevice();
render(<MinePage session={session} announcer={makeAnnouncer()} />, page.root);
void session.sendWaiting().then(() => session.refresh());
