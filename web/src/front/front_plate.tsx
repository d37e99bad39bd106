import "./front_plate.css";
import { Drawing, type Measured } from "../record/drawing";

/** Biceps brachii as a small plate: what a record looks like. Words are those of common practice. */
const BICEPS: Measured = {
  width: 170,
  height: 430,
  stations: [
    {
      kind: "plate",
      top: 0,
      bottom: 92,
      y: 12,
      marks: [
        { y: 34, end: "origin", heads: [0] },
        { y: 72, end: "origin", heads: [1] },
      ],
    },
    { kind: "joint", top: 100, bottom: 130, y: 112, marks: [] },
    { kind: "joint", top: 300, bottom: 330, y: 312, marks: [] },
    { kind: "long", top: 330, bottom: 430, y: 340, marks: [{ y: 372, end: "insertion", heads: [0, 1] }] },
  ],
};

const WORDS = [
  { y: 34, text: "supraglenoid tubercle" },
  { y: 72, text: "coracoid process" },
  { y: 112, text: "shoulder joint" },
  { y: 312, text: "elbow joint" },
  { y: 372, text: "radial tuberosity" },
];

/** An ornament for wide screens; it tells nothing that anybody needs. */
export function FrontPlate() {
  return (
    <div class="front_plate" aria-hidden="true">
      <Drawing measured={BICEPS} heads={2} />
      {WORDS.map((word) => (
        <span key={word.text} class="front_word" style={{ top: `${word.y}px` }}>
          {word.text}
        </span>
      ))}
    </div>
  );
}
