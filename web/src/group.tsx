import "./style/page.css";
import { render } from "preact";
import { GroupPage } from "./group/group_page";
import { startOpening } from "./group/opening";
import { readPage } from "./line/page";
import { makeAnnouncer } from "./parts/announcer";
import { restoreTheme } from "./parts/theme";

restoreTheme();
const page = readPage();
render(<GroupPage opening={startOpening()} announcer={makeAnnouncer()} />, page.root);
