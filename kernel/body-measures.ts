// Body measures that pattern makers agree on: the name a recipe gives one, the term of ISO 8559-1, and how it is taken.
// A recipe may use any name for a measure; these are what an editor offers and explains.

/** A measure of the body. */
export interface BodyMeasure {
  /** As a recipe writes it. */
  readonly name: string;
  /** The term of ISO 8559-1:2017, with its clause where one is known for certain. */
  readonly term: string;
  /** How the tape lies. */
  readonly taken: string;
}

const measure = (name: string, clause: string | undefined, taken: string): BodyMeasure => ({
  name,
  term: `${name.replace(/-/g, " ")}${clause === undefined ? "" : `, ISO 8559-1 clause ${clause}`}`,
  taken,
});

// The clause numbers are those of the public listing of ISO 8559-1:2017; terms without one follow its wording from memory.
const all: readonly BodyMeasure[] = [
  measure("height", undefined, "Floor to crown, upright, without shoes"),
  measure("bust-girth", "5.3.4", "Level round the bust points, tape under the armpits, breathing normally"),
  measure("underbust-girth", "5.3.8", "Level round the ribs, just below the breasts"),
  measure("upper-chest-girth", undefined, "Level, high under the arms and above the breasts"),
  measure("waist-girth", "5.3.10", "Level round the waist, abdomen relaxed"),
  measure("top-hip-girth", "5.3.12", "Level, midway between waist and hip"),
  measure("hip-girth", "5.3.13", "Level round the greatest projection of the buttocks"),
  measure(
    "neck-base-girth",
    "5.3.3",
    "Round the base of the neck through the back and front neck points, tape on edge",
  ),
  measure("neck-girth", "5.3.2", "Round the neck just below the bulge of the voice box, square to the neck"),
  measure("back-neck-point-to-waist", "5.4.5", "From the back neck point down the spine, following its shape"),
  measure(
    "side-neck-point-to-waist-over-bust",
    undefined,
    "Side neck point over the bust point, then straight to the waist",
  ),
  measure("side-neck-point-to-bust-point", undefined, "Side neck point straight to the bust point"),
  measure("front-neck-point-to-waist", undefined, "Front neck point to the waist, the tape bridging the hollow"),
  measure("scye-depth", undefined, "Back neck point down to the level of the armpits"),
  measure("shoulder-length", undefined, "Side neck point to shoulder point along the top of the shoulder"),
  measure("shoulder-slope", undefined, "Angle of the shoulder to the level"),
  measure("across-back-shoulder-width", "5.4.3", "Shoulder point to shoulder point through the back neck point"),
  measure("across-back-width", undefined, "Between the points where the arms part from the back"),
  measure("across-chest-width", undefined, "Between the points where the arms part from the chest, at the same level"),
  measure("bust-point-width", undefined, "Straight from one bust point to the other"),
  measure("armscye-girth", undefined, "Round the root of the arm through shoulder point and armpit, arm down"),
  measure("upper-arm-girth", "5.3.16", "Midway between shoulder point and elbow, square to the arm"),
  measure("elbow-girth", undefined, "Round the bent elbow"),
  measure("wrist-girth", "5.3.19", "Round the wrist, over its bone"),
  measure("outer-arm-length", "5.7.8", "Shoulder point over the slightly bent elbow to the wrist"),
  measure("back-neck-point-to-wrist", "5.4.17", "Back neck point over shoulder point and elbow to the wrist"),
  measure("waist-to-hip", undefined, "At the side, from waist level to hip level over the curve"),
  measure("body-rise", undefined, "Seated on a hard flat chair: waist level to the seat"),
  measure("inside-leg-height", undefined, "Crotch to floor, straight"),
  measure("outside-leg-length", undefined, "Waist at the side over the curve of the hip to the floor"),
  measure("total-crotch-length", undefined, "Front of the waist through the legs to the back of the waist"),
  measure("thigh-girth", "5.3.20", "Level, just below the fold of the buttock"),
  measure("knee-girth", undefined, "Round the knee, leg straight"),
  measure("calf-girth", undefined, "Round the widest part of the calf"),
  measure("ankle-girth", undefined, "The narrowest, above the ankle"),
  measure("head-girth", undefined, "The largest, above the ears"),
  measure("hand-girth", undefined, "The widest, across the knuckles, thumb out"),
];

/** Known body measures by the name a recipe gives them, from the girths of the trunk outward. */
export const bodyMeasures: ReadonlyMap<string, BodyMeasure> = new Map(all.map((each) => [each.name, each]));
