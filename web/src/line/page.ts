/** What the server wrote into the page: `<div id="page" data-page="seat" data-door-code="...">`. */
export interface PageData {
  root: HTMLElement;
  doorCode: string;
  /** Address that players type, without the scheme; told by the server, else the page's own. */
  joinAddress: string;
  /** Whether anybody may open a room for a study group on this server. */
  groups: boolean;
  /** How long this server keeps reviews, as a sentence. */
  keeping: string;
}

export function readPage(): PageData {
  const root = document.getElementById("page");
  if (root === null) throw new Error('the page lacks its element with id "page"');
  const address = root.dataset.joinAddress || location.origin;
  return {
    root,
    doorCode: root.dataset.doorCode ?? "",
    joinAddress: bareAddress(address),
    groups: root.dataset.groups === "1",
    keeping: keepingHere(),
  };
}

/** How long this server keeps reviews, as the server wrote it into the page. */
export function keepingHere(): string {
  return document.getElementById("page")?.dataset.keeping ?? "";
}

/** Where others reach this server: as this page does, but what "localhost" means to it means nothing to them. */
export function sharedOrigin(joinAddress: string): string {
  const local = ["localhost", "127.0.0.1", "[::1]"].includes(location.hostname);
  return local && joinAddress !== "" ? joinAddress.replace(/\/+$/, "") : location.origin;
}

/** An address as people type it: no scheme, no slash at the end. */
export function bareAddress(address: string): string {
  return address.replace(/^https?:\/\//, "").replace(/\/+$/, "");
}
