import "../parts/buttons.css";
import "../desk/start.css";
import "./own.css";
import { useEffect, useState } from "preact/hooks";
import { type Announcer, LiveRegion } from "../parts/announcer";
import { Complaint } from "../parts/notice";
import { ViewMenu } from "../parts/view_menu";
import type { OwnItemFace, OwnLibrary } from "../wire";
import { ask } from "./api";
import { Editor } from "./editor";
import { Library } from "./library";

/** The host's own items: the library, or one of them on the table. */
export function ItemsPage({ announcer }: { announcer: Announcer }) {
  const at = useAddress();
  const [library, setLibrary] = useState<OwnLibrary | null>(null);
  const [problem, setProblem] = useState("");
  const read = async () => {
    const got = await ask<OwnLibrary>("GET", "/desk/own/items");
    setProblem(got.problem);
    if (got.value) setLibrary(got.value);
  };
  useEffect(() => void (at === "" && read()), [at]);
  useEffect(() => void (at !== "" && library === null && read()), []);
  const change = async (method: "POST" | "DELETE", path: string, said: string) => {
    const got = await ask<unknown>(method, path, method === "POST" ? {} : undefined);
    announcer.say(got.problem || said);
    await read();
    if (got.problem) setProblem(got.problem);
  };
  return (
    <main class="start own_items">
      <Head at={at} />
      <Complaint text={problem} />
      {library === null && !problem && <p class="waiting">Reading your items …</p>}
      {library && at === "" && (
        <Library
          library={library}
          onCopy={(id) => void change("POST", `/desk/own/items/${id}/copy`, "Copied.")}
          onDrop={(id) => void change("DELETE", `/desk/own/items/${id}`, "Deleted.")}
        />
      )}
      {library && at !== "" && <OneItem key={at} id={at} library={library} announcer={announcer} />}
      <LiveRegion announcer={announcer} />
    </main>
  );
}

function Head({ at }: { at: string }) {
  return (
    <header class="start_top">
      <h1 class="start_title">{at === "" ? "Own items" : at === "new" ? "A new item" : "Own item"}</h1>
      <p class="start_private">
        Private, as the desk is.{" "}
        {at === "" ? <a href="/desk">To the desk</a> : <a href="#/">All own items</a>}
      </p>
      <ViewMenu keys="D for light or dark" acts={{}} />
    </header>
  );
}

function OneItem(props: { id: string; library: OwnLibrary; announcer: Announcer }) {
  const [face, setFace] = useState<OwnItemFace | null>(null);
  const [problem, setProblem] = useState("");
  const isNew = props.id === "new";
  useEffect(() => {
    if (isNew) return;
    void ask<OwnItemFace>("GET", `/desk/own/items/${encodeURIComponent(props.id)}`).then((got) => {
      setProblem(got.problem);
      if (got.value) setFace(got.value);
    });
  }, []);
  if (problem) return <Complaint text={problem} />;
  if (!isNew && face === null) return <p class="waiting">Reading the item …</p>;
  return (
    <Editor
      face={face}
      library={props.library}
      announcer={props.announcer}
      onSaved={(saved) => {
        setFace(saved);
        if (isNew) history.replaceState(null, "", `#${saved.id}`);
      }}
    />
  );
}

/** What stands behind the # of the address. */
function useAddress(): string {
  const read = () => decodeURIComponent(location.hash.slice(1)).replace(/^\/$/, "");
  const [at, setAt] = useState(read);
  useEffect(() => {
    const turned = () => {
      setAt(read());
      scrollTo({ top: 0 });
    };
    addEventListener("hashchange", turned);
    return () => removeEventListener("hashchange", turned);
  }, []);
  return at;
}
