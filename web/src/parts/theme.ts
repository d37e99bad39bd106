import { lastingShelf } from "../line/memory";

export type Theme = "light" | "dark";

const NAME = "quizroom.theme";

/** The theme in force: the reader's choice on this device, else the system's. */
export function currentTheme(): Theme {
  const chosen = lastingShelf().getItem(NAME);
  if (chosen === "light" || chosen === "dark") return chosen;
  return matchMedia("(prefers-color-scheme: dark)").matches ? "dark" : "light";
}

/** Puts a choice made earlier in force. */
export function restoreTheme(): void {
  const chosen = lastingShelf().getItem(NAME);
  if (chosen === "light" || chosen === "dark") document.documentElement.dataset.theme = chosen;
}

export function switchTheme(): Theme {
  const next = currentTheme() === "dark" ? "light" : "dark";
  lastingShelf().setItem(NAME, next);
  document.documentElement.dataset.theme = next;
  return next;
}
