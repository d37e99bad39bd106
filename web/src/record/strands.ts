import { type MeasuredMark, type MeasuredStation, type Point, round } from "./geometry";

/** How the figure's width is shared out between the muscle (left) and the bones (right). */
export interface Frame {
  width: number;
  boneLeft: number;
  boneRight: number;
}

/** A drawn head of the muscle: pale tendon from end to end, the belly on it, its fibres. */
export interface Strand {
  tendon: string;
  belly: string;
  fibres: string[];
}

export function frameOf(width: number): Frame {
  return { width, boneLeft: width * 0.52, boneRight: width * 0.9 };
}

/** Where a mark lies on its bone; marks of one height are the same mark. */
export function markPoint(mark: MeasuredMark, frame: Frame, heads: number): Point {
  const mean = mark.heads.reduce((sum, head) => sum + head, 0) / Math.max(1, mark.heads.length);
  const share = heads > 1 && mark.end === "origin" ? mean / (heads - 1) : 0.5;
  const reach = frame.boneRight - frame.boneLeft;
  return { x: frame.boneLeft + reach * (0.3 + 0.4 * share), y: mark.y };
}

/** One strand a head, with slips to further origins and insertions. */
export function strandsOf(stations: readonly MeasuredStation[], heads: number, frame: Frame): Strand[] {
  const marks = stations.flatMap((station) => station.marks);
  return Array.from({ length: heads }, (_, head) => headStrands(marks, head, heads, frame)).flat();
}

function headStrands(marks: readonly MeasuredMark[], head: number, heads: number, frame: Frame): Strand[] {
  const own = marks.filter((mark) => mark.heads.includes(head));
  const [start, ...moreStarts] = own.filter((mark) => mark.end === "origin");
  const ends = own.filter((mark) => mark.end === "insertion");
  const end = ends.at(-1);
  if (!start || !end) return [];
  const line = centreLine(markPoint(start, frame, heads), markPoint(end, frame, heads), head, heads, frame);
  const halfWidth = bellyHalfWidth(line, heads, frame);
  const slips = [...moreStarts, ...ends.slice(0, -1)].map((mark) =>
    slip(markPoint(mark, frame, heads), line, mark.end === "origin" ? 1 : -1),
  );
  return [...slips, ribbon(line, halfWidth)];
}

const STEPS = 28;

/** The middle line of a head: off the bone, along the muscle's side, back to the bone. */
function centreLine(from: Point, to: Point, head: number, heads: number, frame: Frame): Point[] {
  const side = frame.boneLeft * 0.94;
  const bellyX = 3 + (side * (head + 0.5)) / heads;
  const rise = (to.y - from.y) * 0.22;
  const corners = [from, { x: bellyX, y: from.y + rise }, { x: bellyX, y: to.y - rise }, to] as const;
  return Array.from({ length: STEPS + 1 }, (_, step) => bezier(corners, step / STEPS));
}

function bezier(corners: readonly [Point, Point, Point, Point], t: number): Point {
  const u = 1 - t;
  const weights = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t] as const;
  const along = (axis: "x" | "y") =>
    corners.reduce((sum, corner, n) => sum + corner[axis] * (weights[n] ?? 0), 0);
  return { x: along("x"), y: along("y") };
}

function bellyHalfWidth(line: readonly Point[], heads: number, frame: Frame): number {
  const length = (line.at(-1)?.y ?? 0) - (line[0]?.y ?? 0);
  return Math.max(1.5, Math.min((frame.boneLeft * 0.46) / heads, length * 0.09));
}

function ribbon(line: readonly Point[], halfWidth: number): Strand {
  const swell = (t: number) => Math.sin(Math.PI * t) ** 1.4;
  const tendon = outline(line, (t) => 1.1 + halfWidth * 0.5 * swell(t));
  const fleshy = line.slice(3, -3);
  const belly = outline(fleshy, (t) => halfWidth * Math.sin(Math.PI * t) ** 0.7);
  const lanes = halfWidth > 5 ? [-0.66, -0.33, 0, 0.33, 0.66] : [-0.4, 0.4];
  const fibres = lanes.map((lane) =>
    polyline(offset(fleshy, (t) => lane * halfWidth * Math.sin(Math.PI * t) ** 0.7)),
  );
  return { tendon, belly, fibres };
}

/** A slip from a further mark into the strand, a little way along it (`direction` 1 down, -1 up). */
function slip(from: Point, line: readonly Point[], direction: 1 | -1): Strand {
  const reach = from.y + direction * 34;
  const joins = nearest(line, reach);
  const corners = [
    from,
    { x: (from.x + joins.x) / 2, y: from.y + direction * 4 },
    { x: joins.x, y: (from.y + joins.y) / 2 },
    joins,
  ] as const;
  const path = Array.from({ length: 13 }, (_, step) => bezier(corners, step / 12));
  return { tendon: outline(path, (t) => 1.1 + 1.2 * t), belly: "", fibres: [] };
}

function nearest(line: readonly Point[], y: number): Point {
  return line.reduce(
    (best, point) => (Math.abs(point.y - y) < Math.abs(best.y - y) ? point : best),
    line[0] as Point,
  );
}

function outline(line: readonly Point[], halfWidth: (t: number) => number): string {
  const left = offset(line, halfWidth);
  const right = offset(line, (t) => -halfWidth(t)).reverse();
  return `${polyline([...left, ...right])}Z`;
}

/** The line moved sideways, by a width that may change along it (t from 0 to 1). */
function offset(line: readonly Point[], width: (t: number) => number): Point[] {
  return line.map((point, n) => {
    const before = line[Math.max(0, n - 1)] ?? point;
    const after = line[Math.min(line.length - 1, n + 1)] ?? point;
    const length = Math.hypot(after.x - before.x, after.y - before.y) || 1;
    const by = width(n / (line.length - 1));
    return {
      x: point.x - ((after.y - before.y) / length) * by,
      y: point.y + ((after.x - before.x) / length) * by,
    };
  });
}

function polyline(points: readonly Point[]): string {
  return points.map((point, n) => `${n === 0 ? "M" : "L"}${round(point.x)} ${round(point.y)}`).join("");
}
