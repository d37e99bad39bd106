import { useLayoutEffect, useState } from "preact/hooks";
import { boneHatch, bonePath, boneShapes, type MeasuredStation } from "./geometry";
import { type Frame, frameOf, markPoint, strandsOf } from "./strands";

interface Measured {
  width: number;
  height: number;
  stations: MeasuredStation[];
}

/** The drawn side of the path: bones from proximal to distal, joints between them, the heads along them.
 *
 * It is measured from the list beside it, so that every leader line ends at its words. The list says
 * all of it in text: screen readers skip the figure. */
export function Figure(props: { list: { current: HTMLElement | null }; heads: number }) {
  const measured = useMeasured(props.list);
  if (measured === null) return <div class="figure" aria-hidden="true" />;
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
      {strandsOf(measured.stations, props.heads, frame).map((strand) => (
        <g key={strand.tendon}>
          <path class="figure_tendon" d={strand.tendon} />
          {strand.belly && <path class="figure_belly" d={strand.belly} />}
          {strand.fibres.map((fibre) => (
            <path key={fibre} class="figure_fibre" d={fibre} />
          ))}
        </g>
      ))}
      {marks.map((mark) => {
        const point = markPoint(mark, frame, props.heads);
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
        <g key={shape.y0} class={shape.named ? "figure_bone" : "figure_bone figure_bone-passed"}>
          <path d={bonePath(boneLeft, boneRight, shape)} />
          {shape.named && <path class="figure_hatch" d={boneHatch(boneLeft, boneRight, shape)} />}
        </g>
      ))}
      {joints.map((joint) => (
        <path key={joint.y} class="figure_joint" d={`M${boneLeft - 2} ${joint.y}H${measured.width}`} />
      ))}
    </g>
  );
}

function useMeasured(list: { current: HTMLElement | null }): Measured | null {
  const [measured, setMeasured] = useState<Measured | null>(null);
  useLayoutEffect(() => {
    const element = list.current;
    if (element === null) return;
    const look = () => setMeasured(measure(element));
    look();
    const observer = new ResizeObserver(look);
    observer.observe(element);
    return () => observer.disconnect();
  }, [list]);
  return measured;
}

/** Heights of stations and marks, from the list's elements and their `data-` attributes. */
function measure(list: HTMLElement): Measured | null {
  const box = list.getBoundingClientRect();
  const width = Number.parseFloat(getComputedStyle(list).paddingLeft);
  if (box.height === 0 || !width) return null;
  const scale = list.offsetHeight / box.height; // a scaled page measures scaled
  const middle = (element: Element) => {
    const rect = element.getBoundingClientRect();
    return ((rect.top + rect.bottom) / 2 - box.top) * scale;
  };
  const stations = Array.from(list.querySelectorAll<HTMLElement>("[data-station]"), (element) => {
    const rect = element.getBoundingClientRect();
    const marks = Array.from(element.querySelectorAll<HTMLElement>("[data-end]"), (mark) => ({
      y: middle(mark),
      end: mark.dataset.end as "origin" | "insertion",
      heads: (mark.dataset.heads ?? "").split(" ").map(Number),
    }));
    return {
      kind: element.dataset.station as MeasuredStation["kind"],
      top: (rect.top - box.top) * scale,
      bottom: (rect.bottom - box.top) * scale,
      y: middle(element.querySelector("h4") ?? element),
      marks,
    };
  });
  return { width, height: list.offsetHeight, stations };
}
