import "./figure.css";
import { boneHatch, boneShapes, type MeasuredStation, outline } from "./geometry";
import { type Frame, frameOf, markPoint, strandsOf } from "./strands";

/** What was measured of the words beside a figure. */
export interface Measured {
  width: number;
  height: number;
  stations: MeasuredStation[];
}

/** Bones from proximal to distal, joints between them, the heads along them, leader lines to the words. */
export function Drawing({ measured, heads }: { measured: Measured; heads: number }) {
  const frame = frameOf(measured.width);
  const marks = measured.stations.flatMap((station) => station.marks);
  return (
    <svg
      class="figure"
      aria-hidden="true"
      viewBox={`0 0 ${measured.width} ${measured.height}`}
      preserveAspectRatio="none"
    >
      <Bones measured={measured} frame={frame} />
      {strandsOf(measured.stations, heads, frame).map((strand) => (
        <g key={strand.tendon}>
          <path class="figure_tendon" d={strand.tendon} />
          {strand.belly && <path class="figure_belly" d={strand.belly} />}
          {strand.fibres.map((fibre) => (
            <path key={fibre} class="figure_fibre" d={fibre} />
          ))}
        </g>
      ))}
      {marks.map((mark) => {
        const point = markPoint(mark, frame, heads);
        return (
          <g key={`${mark.end}${mark.y}`}>
            <path class="figure_leader" d={`M${point.x} ${point.y}H${measured.width}`} />
            <circle class={`figure_${mark.end}`} cx={point.x} cy={point.y} r="3.6" />
          </g>
        );
      })}
    </svg>
  );
}

function Bones({ measured, frame }: { measured: Measured; frame: Frame }) {
  const { boneLeft, boneRight } = frame;
  const joints = measured.stations.filter((station) => station.kind === "joint");
  return (
    <g>
      {boneShapes(measured.stations, measured.height).map((shape) => (
        <g key={shape.y0} class={shape.kind === "passed" ? "figure_passed" : "figure_bone"}>
          <path d={outline(boneLeft, boneRight, shape)} />
          {shape.kind !== "passed" && <path class="figure_hatch" d={boneHatch(boneLeft, boneRight, shape)} />}
        </g>
      ))}
      {joints.map((joint) => (
        <path key={joint.y} class="figure_joint" d={`M${boneLeft - 2} ${joint.y}H${measured.width}`} />
      ))}
    </g>
  );
}
