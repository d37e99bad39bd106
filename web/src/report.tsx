import "./style/page.css";
import "./report/report.css";
import "./report/report_tables.css";
import "./report/report_drawings.css";
import { restoreTheme } from "./parts/theme";

/** The server writes reports in full; all that is left to do here is the reader's choice of light or dark. */
restoreTheme();
