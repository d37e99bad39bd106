/** A line of a form that is ticked or not; the name of its class is that of the form around it. */
export function Tick(props: {
  line: string;
  checked: boolean;
  onTick: (checked: boolean) => void;
  children: string;
}) {
  return (
    <label class={props.line}>
      <input
        type="checkbox"
        checked={props.checked}
        onChange={(event) => props.onTick(event.currentTarget.checked)}
      />
      <span>{props.children}</span>
    </label>
  );
}
