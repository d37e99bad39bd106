import "./style/page.css";
import { render } from "preact";
import { FrontPlate } from "./front/front_plate";
import { ENTER_AT_ONCE, lastingShelf, makeSeatMemory } from "./line/memory";
import { readPage } from "./line/page";
import { restoreTheme } from "./parts/theme";
import { JoinForm } from "./seat/join_form";

restoreTheme();
const page = readPage();
const memory = makeSeatMemory(lastingShelf());

/** Goes to the seat's page, which enters at once with the handle given here. */
function enter(doorCode: string, handle: string): void {
  memory.keepHandle(handle);
  try {
    sessionStorage.setItem(ENTER_AT_ONCE, doorCode);
  } catch {
    // the seat's page will ask for the handle once more
  }
  location.assign(`/seat/${doorCode}`);
}

render(
  <div class="front">
    <main class="door">
      <h1 class="door_title">Class review of muscular anatomy</h1>
      <p class="door_text">Your instructor's wall, or whoever opened the room, shows a door code.</p>
      <JoinForm doorCode={page.doorCode} handle={memory.handle()} complaint="" busy={false} onEnter={enter} />
      {page.groups && (
        <p class="door_aside">
          <a href="/group">Open a room for a study group</a>
          <br />
          Without a host: the rounds run by themselves.
        </p>
      )}
      <p class="door_aside">
        <a href="/mine">Second look and practice</a> · <a href="/desk">I am the host</a> ·{" "}
        <a href="/records">Records of the muscles</a>
      </p>
      <p class="door_aside">
        {page.keeping} <a href="/privacy">What is stored</a>
      </p>
    </main>
    <FrontPlate />
  </div>,
  page.root,
);
