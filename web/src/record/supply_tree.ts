/** A vessel or nerve on the way to the muscle; `ends` are the lines that end in it. */
export interface Branch<L> {
  name: string;
  ends: L[];
  branches: Branch<L>[];
}

/** Merges paths that share their first steps into one tree, trunk first. */
export function supplyTree<L extends { path: readonly string[] }>(lines: readonly L[]): Branch<L>[] {
  const roots: Branch<L>[] = [];
  for (const line of lines) {
    let level = roots;
    let reached: Branch<L> | null = null;
    for (const name of line.path) {
      reached = level.find((branch) => branch.name === name) ?? null;
      if (reached === null) {
        reached = { name, ends: [], branches: [] };
        level.push(reached);
      }
      level = reached.branches;
    }
    reached?.ends.push(line);
  }
  return roots;
}

/** The names passed before the tree forks or something ends, and the branch where that happens. */
export function trunkOf<L>(branch: Branch<L>): { passed: string[]; reached: Branch<L> } {
  const passed: string[] = [];
  let reached = branch;
  while (reached.ends.length === 0 && reached.branches.length === 1) {
    passed.push(reached.name);
    reached = reached.branches[0] as Branch<L>;
  }
  return { passed, reached };
}
