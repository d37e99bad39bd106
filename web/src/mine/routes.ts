/** Where on the page one is. The part after # never reaches a log; a private link has a key there instead. */
export type Route =
  | { page: "today" }
  | { page: "look" /** "" for the looks due today. */; room: string }
  | { page: "practice" }
  | { page: "set"; set: string };

/** Stands for a review's id: the one that was finished last. */
export const LAST = "last";

export function routeOf(hash: string): Route {
  if (!hash.startsWith("#/")) return { page: "today" };
  const [page, id = ""] = hash.slice(2).split("/").map(decoded);
  if (page === "look") return { page, room: id };
  if (page === "practice") return id === "" ? { page } : { page: "set", set: id };
  return { page: "today" };
}

export function addressOf(route: Route): string {
  switch (route.page) {
    case "today":
      return "#/";
    case "look":
      return route.room === "" ? "#/look" : `#/look/${encodeURIComponent(route.room)}`;
    case "practice":
      return "#/practice";
    case "set":
      return `#/practice/${encodeURIComponent(route.set)}`;
  }
}

function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
