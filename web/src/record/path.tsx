import { useRef } from "preact/hooks";
import type { ActionLine, Record as MuscleRecord } from "../wire";
import { listed } from "../words/numbers";
import { breakable } from "../words/word_parts";
import { boneKind } from "./bone_kinds";
import { Figure } from "./figure";
import { type BoneStation, type JointStation, type Mark, type Path, pathOf } from "./stations";
import { OtherReadings } from "./status_word";

/** The muscle's way: where it begins, which joints it crosses and what it does there, where it ends. */
export function PathOfMuscle({ record }: { record: MuscleRecord }) {
  const list = useRef<HTMLOListElement>(null);
  const path = pathOf(record);
  return (
    <section class="path">
      <h3 class="plate_heading">
        Path <span class="plate_aside">proximal to distal</span>
      </h3>
      <div class="path_plate">
        <Figure list={list} heads={path.heads.length} />
        <ol class="path_list" ref={list}>
          {path.stations.map((station, index) =>
            station.kind === "joint" ? (
              <JointItem key={index} station={station} path={path} />
            ) : (
              <BoneItem key={index} station={station} path={path} />
            ),
          )}
        </ol>
      </div>
      <Elsewhere path={path} />
    </section>
  );
}

function Elsewhere({ path }: { path: Path }) {
  if (path.elsewhere.length === 0) return null;
  const readings = path.elsewhere.map((mark) => ({
    status: mark.site.status,
    text: markText(mark, true, path),
  }));
  return (
    <div class="elsewhere">
      <h4 class="elsewhere_heading">Also described</h4>
      <OtherReadings readings={readings} />
    </div>
  );
}

function BoneItem({ station, path }: { station: BoneStation; path: Path }) {
  const core = station.marks.filter((mark) => mark.site.status === "core");
  const others = station.marks.filter((mark) => mark.site.status !== "core");
  return (
    <li class="station" data-station={stationKind(station)}>
      <h4 class="station_bone">{boneHeading(station)}</h4>
      <ul class="marks">
        {core.map((mark) => (
          <li key={mark.site.label + mark.site.detail}>
            <span class="mark_place" data-end={mark.end} data-heads={mark.heads.join(" ")}>
              {placeName(mark, station.soft)}
            </span>
            {mark.site.detail && <span class="mark_detail">, {mark.site.detail}</span>}
            <span class="mark_end">{endText(mark, path)}</span>
          </li>
        ))}
      </ul>
      <OtherReadings
        readings={others.map((mark) => ({
          status: mark.site.status,
          text: markText(mark, station.soft, path),
        }))}
      />
    </li>
  );
}

/** What is drawn beside a station; several bones at once are told apart by the words of their landmark. */
function stationKind(station: BoneStation): "soft" | "long" | "plate" {
  return station.soft ? "soft" : boneKind(station.bone || (station.marks[0]?.site.label ?? ""));
}

/** A landmark of many bones, such as the distal phalanges, comes without a bone's name. */
function boneHeading(station: BoneStation): string {
  if (station.soft) return "Soft tissue";
  return station.bone === "" ? "Several bones" : breakable(station.bone);
}

function markText(mark: Mark, inFull: boolean, path: Path): string {
  const place = [placeName(mark, inFull), mark.site.detail].filter((text) => text !== "").join(", ");
  return `${place} (${endText(mark, path)})`;
}

/** Under its bone's heading a landmark needs no bone. */
function placeName(mark: Mark, inFull: boolean): string {
  return inFull ? mark.site.label : mark.site.landmark;
}

/** "origin, long head"; a mark of all heads needs no names. */
function endText(mark: Mark, path: Path): string {
  const names = mark.heads.map((head) => path.heads[head] ?? "").filter((name) => name !== "");
  if (names.length === 0 || mark.heads.length === path.heads.length) return mark.end;
  return `${mark.end}, ${listed(names)}`;
}

function JointItem({ station, path }: { station: JointStation; path: Path }) {
  const { joint, parts, actions } = station.row;
  const some = parts.length > 0 && parts.length < path.heads.length;
  const core = actions.filter((action) => action.status === "core").sort((a, b) => rank(a) - rank(b));
  const others = actions.filter((action) => action.status !== "core");
  return (
    <li class="station station-joint" data-station="joint">
      <h4 class="station_joint">{breakable(joint)}</h4>
      {some && <p class="station_parts">crossed by the {listed(parts)} only</p>}
      {actions.length === 0 && <p class="station_parts">crossed, no action listed</p>}
      <ul class="actions">
        {core.map((action) => (
          <ActionItem key={action.movement + action.part + action.condition} action={action} />
        ))}
      </ul>
      <OtherReadings
        readings={others.map((action) => ({ status: action.status, text: actionText(action) }))}
      />
    </li>
  );
}

/** How a muscle takes part in a movement. */
export const ROLE_WORD = { prime: "prime mover", assistant: "assistant" };

function ActionItem({ action }: { action: ActionLine }) {
  const more = moreText(action);
  return (
    <li class="action">
      <span class={`action_role action_role-${action.role}`} aria-hidden="true" />
      <span class="action_verb">{action.verb}</span> <span class="action_word">{ROLE_WORD[action.role]}</span>
      {more && <span class="action_more"> · {more}</span>}
    </li>
  );
}

function actionText(action: ActionLine): string {
  const more = moreText(action);
  return more ? `${action.verb} (${more})` : action.verb;
}

function moreText(action: ActionLine): string {
  return [action.part, action.condition].filter((text) => text !== "").join("; ");
}

/** Prime movers first. */
function rank(action: ActionLine): number {
  return action.role === "prime" ? 0 : 1;
}
