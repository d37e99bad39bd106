import type { ArteryPath, Record as MuscleRecord, NervePath } from "../wire";
import { StatusWord } from "./status_word";
import { type Branch, supplyTree, trunkOf } from "./supply_tree";

/** Nerve from its roots to the branch, artery from its trunk to the branch. */
export function Supply({ record }: { record: MuscleRecord }) {
  return (
    <section class="supply">
      <h3 class="plate_heading plate_heading-nerve">Nerve</h3>
      <ul class="strands">
        {record.nerves.map((nerve) => (
          <NerveStrand key={nerve.nerve + nerve.part + nerve.branch} nerve={nerve} />
        ))}
      </ul>
      <h3 class="plate_heading plate_heading-artery">Artery</h3>
      <ArteryTree branches={supplyTree(record.arteries)} />
    </section>
  );
}

function NerveStrand({ nerve }: { nerve: NervePath }) {
  const core = nerve.status === "core";
  const passed = core ? nerve.path.filter((name) => name !== nerve.nerve) : [];
  const drawn = nerve.roots.length > 0 ? "strand strand-rooted" : "strand"; // a cranial nerve has no roots
  return (
    <li class={core ? drawn : "strand strand-other"}>
      {core && <Roots nerve={nerve} />}
      {passed.length > 0 && <p class="strand_passed">{chain(passed)}</p>}
      <p class="strand_name">
        {nerve.nerve} <StatusWord status={nerve.status} />
      </p>
      <EndsIn part={nerve.part} branch={nerve.branch} />
    </li>
  );
}

/** The segments, drawn as filaments that run together into the nerve; the chief ones are set bold. */
function Roots({ nerve }: { nerve: NervePath }) {
  if (nerve.roots.length === 0) return null;
  const chief = nerve.roots.filter((root) => nerve.main.includes(root));
  const some = chief.length > 0 && chief.length < nerve.roots.length;
  return (
    <div class="roots">
      <p class="roots_line">
        <span class="unseen">roots </span>
        {nerve.roots.map((root) => (
          <span key={root} class={nerve.main.includes(root) ? "root root-chief" : "root"}>
            {root}{" "}
          </span>
        ))}
        <span class="roots_note">{some ? `roots, chiefly ${chief.join(", ")}` : "roots"}</span>
      </p>
      <Filaments nerve={nerve} />
    </div>
  );
}

const ROOT_EM = 2.4;

function Filaments({ nerve }: { nerve: NervePath }) {
  const width = nerve.roots.length * ROOT_EM * 10;
  return (
    <svg
      class="filaments"
      aria-hidden="true"
      viewBox={`0 0 ${width} 16`}
      style={{ width: `${nerve.roots.length * ROOT_EM}em` }}
    >
      {nerve.roots.map((root, index) => {
        const x = (index + 0.5) * ROOT_EM * 10;
        const chief = nerve.main.length === 0 || nerve.main.includes(root);
        return (
          <path
            key={root}
            class={chief ? "filament" : "filament filament-thin"}
            d={`M${x} 0C${x} 10 0 6 0 16`}
          />
        );
      })}
    </svg>
  );
}

function ArteryTree({ branches }: { branches: Branch<ArteryPath>[] }) {
  return (
    <ul class="vessels">
      {branches.map((branch) => {
        const { passed, reached } = trunkOf(branch);
        const trunk = reached.ends.length === 0 ? [...passed, reached.name] : passed;
        return (
          <li key={branch.name} class="strand strand-artery">
            {trunk.length > 0 && <p class="strand_passed">{chain(trunk)}</p>}
            {reached.ends.map((line) => (
              <ArteryEnd key={line.artery + line.part + line.branch} line={line} />
            ))}
            {reached.branches.length > 0 && <ArteryTree branches={reached.branches} />}
          </li>
        );
      })}
    </ul>
  );
}

function ArteryEnd({ line }: { line: ArteryPath }) {
  return (
    <>
      <p class="strand_name">
        {line.artery} <StatusWord status={line.status} />
      </p>
      <EndsIn part={line.part} branch={line.branch} />
    </>
  );
}

function EndsIn({ part, branch }: { part: string; branch: string }) {
  const words = [branch, part && `to the ${part}`].filter((text) => text !== "").join(", ");
  return words ? <p class="strand_end">{words}</p> : null;
}

/** Steps on the way, each leading to the next. */
function chain(names: readonly string[]): string {
  return names.join(" › ");
}
