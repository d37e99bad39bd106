/** What was measured of the text beside the figure; y in CSS pixels from the figure's top. */
export interface MeasuredStation {
  kind: "bone" | "soft" | "joint";
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

/** A drawn bone between two heights; `named` is false where the muscle only passes it. */
export interface BoneShape {
  y0: number;
  y1: number;
  named: boolean;
}

const JOINT_GAP = 5;
const LEAST_BONE = 14;

/** The bones of the figure: one a station, stretched to the joints above and below, and those passed by. */
export function boneShapes(stations: readonly MeasuredStation[], height: number): BoneShape[] {
  const shapes: BoneShape[] = [];
  for (const segment of segments(stations, height)) {
    if (segment.y1 - segment.y0 < LEAST_BONE) continue;
    const bones = segment.stations.filter((station) => station.kind === "bone");
    if (bones.length === 0) shapes.push({ y0: segment.y0, y1: segment.y1, named: false });
    for (const bone of bones) {
      const place = segment.stations.indexOf(bone);
      const next = segment.stations[place + 1];
      shapes.push({
        y0: place === 0 ? segment.y0 : bone.top + 2,
        y1: next ? next.top - 2 : segment.y1,
        named: true,
      });
    }
  }
  return shapes;
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

/** Outline of a long bone: wider at both ends, with rounded joint surfaces. */
export function bonePath(x0: number, x1: number, shape: BoneShape): string {
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
  const edge = x1 - (x1 - x0) * 0.2;
  const flare = Math.min(12, (shape.y1 - shape.y0) / 4);
  const top = shape.y0 + flare * 2;
  const bottom = shape.y1 - flare * 2;
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
