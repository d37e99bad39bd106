/** What was measured of the text beside the figure; y in CSS pixels from the figure's top. */
export interface MeasuredStation {
  kind: "long" | "plate" | "soft" | "joint";
  top: number;
  bottom: number;
  /** Height of the heading's middle: where a joint's line is drawn. */
  y: number;
  marks: MeasuredMark[];
}

export interface MeasuredMark {
  y: number;
  end: "origin" | "insertion";
  heads: number[];
}

export interface Point {
  x: number;
  y: number;
}

/** A drawn bone between two heights; one that the muscle only passes is not drawn, but its way is. */
export interface BoneShape {
  y0: number;
  y1: number;
  kind: "long" | "plate" | "passed";
}

const JOINT_GAP = 5;
const LEAST_BONE = 14;

/** The bones of the figure: one a station, stretched to the joints above and below, and those passed by. */
export function boneShapes(stations: readonly MeasuredStation[], height: number): BoneShape[] {
  const shapes: BoneShape[] = [];
  for (const segment of segments(stations, height)) {
    if (segment.y1 - segment.y0 < LEAST_BONE) continue;
    const isBare = !segment.stations.some((station) => boneOf(station));
    if (isBare) shapes.push({ y0: segment.y0, y1: segment.y1, kind: "passed" });
    for (const bone of segment.stations) {
      const kind = boneOf(bone);
      if (kind === null) continue;
      const place = segment.stations.indexOf(bone);
      const next = segment.stations[place + 1];
      shapes.push({
        y0: place === 0 ? segment.y0 : bone.top + 2,
        y1: next ? next.top - 2 : segment.y1,
        kind,
      });
    }
  }
  return shapes;
}

function boneOf(station: MeasuredStation): "long" | "plate" | null {
  return station.kind === "long" || station.kind === "plate" ? station.kind : null;
}

interface Segment {
  y0: number;
  y1: number;
  stations: MeasuredStation[];
}

/** The stretches between joints. */
function segments(stations: readonly MeasuredStation[], height: number): Segment[] {
  const found: Segment[] = [];
  let open: Segment = { y0: 2, y1: height - 2, stations: [] };
  for (const station of stations) {
    if (station.kind !== "joint") {
      open.stations.push(station);
      continue;
    }
    found.push({ ...open, y1: station.y - JOINT_GAP });
    open = { y0: station.y + JOINT_GAP, y1: height - 2, stations: [] };
  }
  return [...found, open];
}

/** The outline of a bone by its kind; of one that is only passed, the line along which the muscle goes. */
export function outline(x0: number, x1: number, shape: BoneShape): string {
  if (shape.kind === "passed") return `M${(x0 + x1) / 2} ${shape.y0}V${shape.y1}`;
  return shape.kind === "long" ? bonePath(x0, x1, shape) : platePath(x0, x1, shape);
}

/** Outline of a short, flat or irregular bone: no shaft, only rounded corners. */
function platePath(x0: number, x1: number, shape: BoneShape): string {
  const corner = plateCorner(x0, x1, shape);
  const { y0, y1 } = shape;
  return [
    `M${x0} ${y0 + corner}`,
    `Q${x0} ${y0} ${x0 + corner} ${y0}`,
    `H${x1 - corner}`,
    `Q${x1} ${y0} ${x1} ${y0 + corner}`,
    `V${y1 - corner}`,
    `Q${x1} ${y1} ${x1 - corner} ${y1}`,
    `H${x0 + corner}`,
    `Q${x0} ${y1} ${x0} ${y1 - corner}Z`,
  ].join("");
}

function plateCorner(x0: number, x1: number, shape: BoneShape): number {
  return round(Math.min((x1 - x0) / 2, (shape.y1 - shape.y0) / 3));
}

/** Outline of a long bone: wider at both ends, with rounded joint surfaces. */
function bonePath(x0: number, x1: number, shape: BoneShape): string {
  const { y0, y1 } = shape;
  const flare = Math.min(12, (y1 - y0) / 4);
  const waist = (x1 - x0) * 0.2;
  const middle = (x0 + x1) / 2;
  return [
    `M${x0} ${y0 + flare * 0.6}`,
    `Q${x0} ${y0} ${middle} ${y0}`,
    `Q${x1} ${y0} ${x1} ${y0 + flare * 0.6}`,
    `Q${x1} ${y0 + flare * 1.4} ${x1 - waist} ${y0 + flare * 2}`,
    `L${x1 - waist} ${y1 - flare * 2}`,
    `Q${x1} ${y1 - flare * 1.4} ${x1} ${y1 - flare * 0.6}`,
    `Q${x1} ${y1} ${middle} ${y1}`,
    `Q${x0} ${y1} ${x0} ${y1 - flare * 0.6}`,
    `Q${x0} ${y1 - flare * 1.4} ${x0 + waist} ${y1 - flare * 2}`,
    `L${x0 + waist} ${y0 + flare * 2}`,
    `Q${x0} ${y0 + flare * 1.4} ${x0} ${y0 + flare * 0.6}Z`,
  ].join("");
}

/** The engraver's shading along the right side of a bone: short level strokes, longest at mid-height. */
export function boneHatch(x0: number, x1: number, shape: BoneShape): string {
  const long = shape.kind === "long";
  const edge = long ? x1 - (x1 - x0) * 0.2 : x1;
  const end = long ? Math.min(12, (shape.y1 - shape.y0) / 4) * 2 : plateCorner(x0, x1, shape);
  const top = shape.y0 + end;
  const bottom = shape.y1 - end;
  const strokes: string[] = [];
  for (let y = top; y <= bottom; y += 2.6) {
    const length = (x1 - x0) * (0.08 + 0.22 * Math.sin((Math.PI * (y - top)) / (bottom - top || 1)));
    strokes.push(`M${round(edge - length)} ${round(y)}H${round(edge)}`);
  }
  return strokes.join("");
}

export function round(value: number): number {
  return Math.round(value * 10) / 10;
}
