import "./buttons.css";
import "./view_menu.css";
import { useState } from "preact/hooks";
import { useKeys, useKeysOn } from "./keys";
import { currentTheme, switchTheme } from "./theme";

/** How this page looks here: light or dark, and whether single keys act. Nothing of the review. */
export function ViewMenu(props: { keys: string; acts: { [key: string]: () => void } }) {
  const [theme, setTheme] = useState(currentTheme());
  const [keysOn, setKeysOn] = useKeysOn();
  const change = () => setTheme(switchTheme());
  useKeys(keysOn, { ...props.acts, d: change });
  return (
    <details class="view_menu no-print">
      <summary class="view_menu_open">View</summary>
      <div class="view_menu_box">
        <button class="button" type="button" onClick={change}>
          {theme === "dark" ? "Light paper" : "Dark slate"}
        </button>
        <label class="view_menu_keys">
          <input
            type="checkbox"
            checked={keysOn}
            onChange={(event) => setKeysOn(event.currentTarget.checked)}
          />
          <span>Single keys act: {props.keys}</span>
        </label>
      </div>
    </details>
  );
}
