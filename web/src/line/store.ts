import { useEffect, useState } from "preact/hooks";

/** A value that components can follow. */
export interface Store<T> {
  get(): T;
  /** Replaces the value; followers hear of it only when it is another one. */
  set(next: T): void;
  follow(hear: (value: T) => void): () => void;
}

export function makeStore<T>(first: T): Store<T> {
  let value = first;
  const followers = new Set<(value: T) => void>();
  return {
    get: () => value,
    set(next) {
      if (Object.is(next, value)) return;
      value = next;
      for (const hear of [...followers]) hear(value);
    },
    follow(hear) {
      followers.add(hear);
      return () => followers.delete(hear);
    },
  };
}

/** The store's value, kept up to date in the component that asks. */
export function useStore<T>(store: Store<T>): T {
  const [value, setValue] = useState(store.get());
  useEffect(() => {
    setValue(() => store.get());
    return store.follow((next) => setValue(() => next));
  }, [store]);
  return value;
}
