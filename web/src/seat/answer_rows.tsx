import type { ItemFace } from "../wire";
import { ChoiceRows } from "./choice_rows";
import type { Draft } from "./draft";
import { MatchRows } from "./match_rows";
import { OrderRows } from "./order_rows";
import { TypedLines } from "./typed_lines";

/** What an item of any format is answered with. The page holds its stem as "stem" and what is asked as "choose". */
export function AnswerRows(props: {
  item: ItemFace;
  draft: Draft;
  onDraft: (draft: Draft) => void;
  say: (text: string) => void;
}) {
  switch (props.item.format) {
    case "one_best":
    case "pick_n":
      return <ChoiceRows {...props} />;
    case "ordering":
      return <OrderRows {...props} />;
    case "matching":
      return <MatchRows {...props} />;
    case "typed":
    case "free_list":
      return <TypedLines {...props} />;
  }
}

/** What is to be done, in a sentence. */
export function askText(item: ItemFace, draft: Draft): string {
  switch (item.format) {
    case "one_best":
      return "Choose the one best answer.";
    case "pick_n":
      return `Choose ${item.pick}. Chosen: ${draft.choice.length} of ${item.pick}.`;
    case "ordering":
      return "Put all in order with the arrows, the first on top.";
    case "matching":
      return `Choose a letter for each row. A letter may come twice. Chosen: ${draft.choice.filter(Boolean).length} of ${item.pick}.`;
    case "typed":
      return "Type the term.";
    case "free_list":
      return `Type ${item.pick} terms, in any order.`;
  }
}

/** The option that a key stands for where options are chosen: A to E, or 1 to 5; with Ctrl and the like none. */
export function keyedLetter(event: KeyboardEvent, item: ItemFace): string | null {
  if (item.format !== "one_best" && item.format !== "pick_n") return null;
  if (event.ctrlKey || event.altKey || event.metaKey) return null;
  const byLetter = item.options.find((option) => option.letter === event.key.toUpperCase());
  return (byLetter ?? item.options[Number(event.key) - 1])?.letter ?? null;
}
