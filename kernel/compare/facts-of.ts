// A comparison as a list of facts, each under a kind and a name and with how much it is: what a cause undoes is told by them.
import type { ChangedCheck, Comparison, Fact } from "./comparison.ts";

/** A fact, how far it is from what it was, and whether any number tells that at all. */
export interface SizedFact extends Fact {
  /** In the fact's own unit; infinite where a thing is there on one side only, or is told in words. */
  readonly size: number;
}

/** Everything that a comparison says, the most consequential kinds first. */
export const factsOf = ({ values, pieces, seams, cuts, checks }: Comparison): SizedFact[] => [
  ...checks.began.map((check) => sized("check", `${checkName(check)} began to fail`, null)),
  ...checks.ceased.map((check) => sized("check", `${checkName(check)} ceased to fail`, null)),
  ...pieces.flatMap(({ name, status, edges, places, corners, marks, area, renamed }): SizedFact[] => [
    ...(status === "changed" ? [] : [sized("piece", `${name} ${status}`, null)]),
    ...edges.map((edge) => sized("edge", `${name}.${edge.name}`, sizeOfEdge(edge.difference, edge.moved))),
    ...renamed.map((each) => sized("edge", `${name}.${each.after} renamed`, null)),
    ...(area === null || status === "added" || status === "removed"
      ? []
      : [sized("area", name, area.added + area.removed)]),
    ...corners.map((corner) => sized("corner", `${name}.${corner.edges.join("/")}`, corner.moved)),
    ...marks.map(({ kind, on, before, after }) =>
      sized("mark", `${name} ${kind}${on === "" ? "" : ` ${on}`}`, differenceOf(before, after)),
    ),
    ...places.map((place) => sized("place", `${name}.${place.name}`, place.moved)),
  ]),
  ...seams.map(({ name, before, after }) =>
    sized(
      "seam",
      name,
      before && after
        ? Math.abs(after.firstLength - before.firstLength) + Math.abs(after.secondLength - before.secondLength)
        : null,
    ),
  ),
  ...cuts.map(({ name }) => sized("cut", name, null)),
  ...values.map(({ name, before, after }) => sized("value", name, differenceOf(before, after))),
];

const checkName = ({ check, on, message }: ChangedCheck): string =>
  `${check}${on === "" ? ` (${message})` : ` on ${on}`}`;

const sized = (kind: Fact["kind"], name: string, size: number | null): SizedFact => ({
  kind,
  name,
  size: size ?? Number.POSITIVE_INFINITY,
});

const sizeOfEdge = (difference: number | null, moved: number | null): number | null =>
  difference === null && moved === null ? null : Math.abs(difference ?? 0) + (moved ?? 0);

const differenceOf = (before: unknown, after: unknown): number | null =>
  typeof before === "number" && typeof after === "number" ? Math.abs(after - before) : null;
