// What is known of the piece that is being traced from a picture: the picture, the points set on it, what was said of them, and
// what comes of it all. Components read these signals and call the functions below; nobody else changes them.
import { computed, signal } from "@preact/signals";
import type { Point } from "../../../kernel/geometry/point.ts";
import type { Fault, Part } from "../../paper/fault.ts";
import { sentBy } from "../../paper/homography.ts";
import { lengthWritten, type PaperUnits } from "../../paper/length-written.ts";
import { type Straightened, straightened } from "../../paper/straightened.ts";
import type { TracedPoint } from "../../paper/traced-edges.ts";
import { faultsOf, type TracedPiece } from "../../paper/traced-outline.ts";
import { type Photograph, readPicture } from "./read-picture.ts";

/** The points on the picture, in its pixels. */
export interface Marked {
  /** Corners of the known rectangle, four at most. */
  readonly rectangle: readonly Point[];
  /** The points of known distance, two at most. */
  readonly known: readonly Point[];
  readonly outline: readonly TracedPoint[];
}

const nothingMarked: Marked = { rectangle: [], known: [], outline: [] };

export const isOpen = signal(false);
export const photograph = signal<Photograph | undefined>(undefined);
/** A picture that would take the place of one with points on it, until the user has said so. */
export const waiting = signal<Photograph | undefined>(undefined);
/** Why a picture was not taken. */
export const refused = signal("");
/** The part of the work in hand: what a click on the picture sets. */
export const part = signal<Part>("straighten");
export const marked = signal<Marked>(nothingMarked);
/** The point of the part in hand that was set or picked last. */
export const chosen = signal<number | undefined>(undefined);
export const nextKind = signal<TracedPoint["kind"]>("corner");
/** The edge whose row the hand or the cursor is on. */
export const edgeInHand = signal("");
/** What was done last, for those who do not see it. */
export const told = signal("");

/** What is written in the fields. */
export const said = {
  across: signal("20"),
  down: signal("20"),
  apart: signal(""),
  units: signal<PaperUnits>("cm"),
  name: signal("piece-1"),
  line: signal<TracedPiece["line"]>("cutting"),
  allowance: signal("1.5"),
  grainAlong: signal(""),
};

/** How the picture lies on the paper, or what is missing. */
export const lying = computed<Straightened | Fault>(() => {
  const units = said.units.value;
  const { rectangle, known } = marked.value;
  return straightened(
    {
      corners: rectangle,
      width: lengthWritten(said.across.value, units),
      height: lengthWritten(said.down.value, units),
    },
    { points: known, length: lengthWritten(said.apart.value, units) },
  );
});

/** The piece in mm of paper; undefined while its size is unknown or a point lies beyond the horizon. */
export const traced = computed<TracedPiece | undefined>(() => {
  const { value } = lying;
  if ("words" in value) return undefined;
  const outline: TracedPoint[] = [];
  for (const point of marked.value.outline) {
    const at = sentBy(value.toPaper, point.at);
    if (!at) return undefined;
    outline.push({ ...point, at });
  }
  return {
    name: said.name.value.trim(),
    outline,
    line: said.line.value,
    allowance: said.allowance.value,
    grainAlong: said.grainAlong.value,
    units: said.units.value,
  };
});

/** Everything that is still the matter. */
export const faults = computed<readonly Fault[]>(() => {
  const { value } = lying;
  if ("words" in value) return [value];
  if (traced.value) return faultsOf(traced.value);
  return [{ part: "outline", words: "A point of the outline lies where no paper can be seen: behind the horizon." }];
});

/** Takes a picture in hand; when another one with points on it is there, the user is asked first. */
export const begin = async (file: File): Promise<void> => {
  isOpen.value = true;
  refused.value = "";
  const read = await readPicture(file);
  if (typeof read === "string") refused.value = read;
  else if (hasPoints()) wait(read);
  else beginWith(read);
};

/** The user's word that the waiting picture takes the place of the other. */
export const beginAnew = (): void => {
  const next = waiting.peek();
  waiting.value = undefined;
  if (next) beginWith(next);
};

export const forgetWaiting = (): void => wait(undefined);

/** Puts the card away; picture and points stay, to be gone on with. */
export const putAside = (): void => {
  isOpen.value = false;
};

/** The work is done, and the picture is given back. */
export const finish = (): void => {
  isOpen.value = false;
  wait(undefined);
  const done = photograph.peek();
  photograph.value = undefined;
  if (done) URL.revokeObjectURL(done.address);
  clear();
};

/** Takes up a part of the work. */
export const takeUp = (next: Part): void => {
  part.value = next;
  chosen.value = undefined;
};

/** Sets a point at a spot of the picture. An outline goes on behind the point that was set or picked last. */
export const set = (at: Point, kind: TracedPoint["kind"] = nextKind.peek()): void => {
  const now = marked.peek();
  switch (part.peek()) {
    case "straighten":
      if (now.rectangle.length === 4) tell("All 4 corners are set: move one, or take the last one back.");
      else put({ ...now, rectangle: [...now.rectangle, at] }, now.rectangle.length, "Corner");
      break;
    case "size":
      if (now.known.length === 2) tell("Both points are set: move one, or take the last one back.");
      else put({ ...now, known: [...now.known, at] }, now.known.length, "Point");
      break;
    case "outline": {
      const index = Math.min((chosen.peek() ?? now.outline.length - 1) + 1, now.outline.length);
      const point: TracedPoint = { at, kind, edge: "", isFold: false, allowance: "" };
      put({ ...now, outline: now.outline.toSpliced(index, 0, point) }, index, wordFor(kind));
      break;
    }
    default:
      tell("Nothing is set on the picture in this part of the work.");
  }
};

/** Begins to move points: what follows up to the next change is one to take back. */
export const beginMove = (): void => {
  past.push(marked.peek());
};

/** Moves a point of the part in hand. */
export const move = (index: number, at: Point): void => {
  const now = marked.peek();
  chosen.value = index;
  if (part.peek() === "straighten") marked.value = { ...now, rectangle: now.rectangle.with(index, at) };
  else if (part.peek() === "size") marked.value = { ...now, known: now.known.with(index, at) };
  else marked.value = { ...now, outline: now.outline.with(index, { ...now.outline[index]!, at }) };
};

/** Picks a point; its kind is shown, and an outline goes on behind it. */
export const pick = (index: number): void => {
  chosen.value = index;
};

/** Takes a point away. */
export const remove = (index: number): void => {
  const now = marked.peek();
  beginMove();
  if (part.peek() === "straighten") marked.value = { ...now, rectangle: now.rectangle.toSpliced(index, 1) };
  else if (part.peek() === "size") marked.value = { ...now, known: now.known.toSpliced(index, 1) };
  else marked.value = { ...now, outline: now.outline.toSpliced(index, 1) };
  chosen.value = index > 0 ? index - 1 : undefined;
  tell(`Point ${index + 1} taken away.`);
};

/** Says of a point of the outline what it is, or of the edge that begins at it how it is called. */
export const say = (index: number, more: Partial<Omit<TracedPoint, "at">>): void => {
  const now = marked.peek();
  const point = now.outline[index];
  if (!point) return;
  beginMove();
  marked.value = { ...now, outline: now.outline.with(index, { ...point, ...more }) };
  if (more.kind) tell(`Point ${index + 1} is ${more.kind === "corner" ? "a corner" : "on a curve"}.`);
};

/** Takes back what was done last, and shows the part of the work that it belongs to. */
export const takeBack = (): void => {
  const before = past.pop();
  if (!before) {
    tell("There is nothing to take back.");
    return;
  }
  const now = marked.peek();
  const fewer = now.outline.length - before.outline.length;
  marked.value = before;
  if (before.rectangle !== now.rectangle) part.value = "straighten";
  else if (before.known !== now.known) part.value = "size";
  else if (before.outline.some(({ at }, i) => at !== now.outline[i]?.at) || fewer !== 0) part.value = "outline";
  // An outline goes on behind the point that it went on behind before.
  const left = pointsInHand.peek().length;
  const goesOn = (chosen.peek() ?? left) - Math.sign(fewer);
  chosen.value = left === 0 ? undefined : Math.min(Math.max(0, goesOn), left - 1);
  tell("Taken back.");
};

/** The points of the part in hand. */
export const pointsInHand = computed<readonly Point[]>(() => {
  const { rectangle, known, outline } = marked.value;
  return part.value === "straighten" ? rectangle : part.value === "size" ? known : outline.map(({ at }) => at);
});

let past: Marked[] = [];

const hasPoints = (): boolean => {
  const { rectangle, known, outline } = marked.peek();
  return photograph.peek() !== undefined && rectangle.length + known.length + outline.length > 0;
};

const wait = (next: Photograph | undefined): void => {
  const before = waiting.peek();
  if (before) URL.revokeObjectURL(before.address);
  waiting.value = next;
};

const beginWith = (next: Photograph): void => {
  const before = photograph.peek();
  if (before) URL.revokeObjectURL(before.address);
  clear();
  photograph.value = next;
};

const clear = (): void => {
  past = [];
  marked.value = nothingMarked;
  chosen.value = undefined;
  part.value = "straighten";
  nextKind.value = "corner";
  refused.value = "";
  told.value = "";
  said.grainAlong.value = "";
};

const put = (next: Marked, index: number, what: string): void => {
  beginMove();
  marked.value = next;
  chosen.value = index;
  refused.value = "";
  tell(`${what} set: point ${index + 1}.`);
};

const wordFor = (kind: TracedPoint["kind"]): string => (kind === "corner" ? "Corner" : "Curve point");

const tell = (words: string): void => {
  told.value = words;
};
