import "./style/page.css";
import { render } from "preact";
import { readPage } from "./line/page";
import { ItemsPage } from "./own/items_page";
import { makeAnnouncer } from "./parts/announcer";
import { restoreTheme } from "./parts/theme";

restoreTheme();
render(<ItemsPage announcer={makeAnnouncer()} />, readPage().root);
