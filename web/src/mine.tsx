import "./style/page.css";
import { render } from "preact";
import { keepKey, keyInLink, ownKey, takeLinkedKey } from "./line/own_key";
import { readPage } from "./line/page";
import { makeMineApi } from "./mine/api";
import { keptPages } from "./mine/kept_pages";
import { lastingDrawer, makeLookBox } from "./mine/look_box";
import { MinePage } from "./mine/mine_page";
import { makeMineSession } from "./mine/session";
import { keepPageOnDevice, sendWhenPossible } from "./mine/staying";
import { makeAnnouncer } from "./parts/announcer";
import { restoreTheme } from "./parts/theme";

const KEPT_MS = 30 * 24 * 3_600_000;

restoreTheme();
// a private link that is opened while the page is there begins anew with its key
window.addEventListener("hashchange", () => {
  if (keyInLink(location.hash) !== null) location.reload();
});
const page = readPage();
const linked = takeLinkedKey();
const key = linked === null ? ownKey() : keepKey(linked);
const player = key.slice(0, 8);
const box = makeLookBox(lastingDrawer(), player);
box.tidy(Date.now() - KEPT_MS);
const session = makeMineSession(makeMineApi(key, keptPages(player)), box);
sendWhenPossible(session);
keepPageOnDevice();
render(<MinePage session={session} playerKey={key} announcer={makeAnnouncer()} />, page.root);
void session.sendWaiting().then(() => session.refresh());
