import "./style/page.css";
import { render } from "preact";

const page = document.getElementById("page");
if (page) render(<p class="waiting">Loading …</p>, page);
