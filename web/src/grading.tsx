import "./style/page.css";
import "./parts/buttons.css";
import "./style/grading.css";
import "./style/hosts.css";
import { restoreTheme } from "./parts/theme";

// The server writes these pages in full; only light or dark is remembered here.
restoreTheme();
