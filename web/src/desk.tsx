import "./style/page.css";
import { render } from "preact";
import { DeskPage } from "./desk/desk_page";
import { startDesk } from "./desk/session";
import { readPage } from "./line/page";
import { makeAnnouncer } from "./parts/announcer";
import { restoreTheme } from "./parts/theme";

restoreTheme();
render(<DeskPage session={startDesk()} announcer={makeAnnouncer()} />, readPage().root);
