// A comparison as sections of tables and sentences, the most consequential first; terminal, Markdown and page write the same ones.
import { isUnchanged } from "../compare/comparison.ts";
import { causeSection } from "./compare-cause-section.ts";
import { clothSection, clothSummary } from "./compare-cloth-section.ts";
import { pieceSection } from "./compare-piece-section.ts";
import { fits, seamSection } from "./compare-seam-section.ts";
import { headOf, type Review, type Section, type Told } from "./compare-told.ts";
import { amount, words } from "./table.ts";
import { counted } from "./verdict.ts";

/** A review as it is told. */
export const toldOf = (review: Review): Told => ({
  title: review.title,
  before: review.before,
  after: review.after,
  summary: summaryOf(review),
  remarks: review.remarks,
  sections: sectionsOf(review),
});

/** One sentence over all: how much changed. */
const summaryOf = (review: Review): string => {
  const { comparison, isSameText } = review;
  if (isUnchanged(comparison))
    return isSameText ? "Nothing changed." : "Nothing changed in the garment; only the text did.";
  const { pieces, seams, checks, values, cuts } = comparison;
  const unfit = seams.filter(({ before, after }) => before && fits(before) && after && !fits(after)).length;
  const parts = [
    ...(checks.began.length === 0 ? [] : [`${counted(checks.began.length, "check")} began to fail`]),
    ...(checks.ceased.length === 0 ? [] : [`${counted(checks.ceased.length, "check")} ceased to fail`]),
    ...(pieces.length === 0 ? ["no piece changed"] : [`${counted(pieces.length, "piece")} changed`]),
    ...(seams.length === 0
      ? []
      : [
          `${counted(seams.length, "seam")} changed, ${unfit === 0 ? "none stopped fitting" : `${unfit} no longer ${unfit === 1 ? "fits" : "fit"}`}`,
        ]),
    ...(cuts.length === 0 ? [] : ["what is cut changed"]),
    ...clothSummary(review),
    ...(values.length === 0 ? [] : [`${counted(values.length, "value")} changed`]),
  ];
  const all = parts.join("; ");
  return `${all.charAt(0).toUpperCase()}${all.slice(1)}.`;
};

/** Every section that has something to tell. */
const sectionsOf = (review: Review): Section[] =>
  [
    ...checkSections(review),
    ...review.comparison.pieces.map((piece) => pieceSection(piece, review)),
    seamSection(review),
    cutSection(review),
    clothSection(review),
    valueSection(review),
    causeSection(review),
  ].filter(({ rows, sentences, remark }) => rows.length > 0 || sentences.length > 0 || remark !== "");

const checkSections = ({ comparison: { checks } }: Review): Section[] => [
  {
    heading: "Began to fail",
    remark: "",
    rows: [],
    sentences: checks.began.map(({ severity, check, message, line, file }) => ({
      text: `${severity} ${check}, ${file}:${line}: ${message}`,
      tone: severity === "error" ? "bad" : "warning",
    })),
  },
  {
    heading: "Ceased to fail",
    remark: "",
    rows: [],
    sentences: checks.ceased.map(({ check, message }) => ({ text: `${check}: it was: ${message}`, tone: "good" })),
  },
];

const cutSection = ({ comparison: { cuts } }: Review): Section => ({
  heading: "Cutting",
  remark: "",
  rows:
    cuts.length === 0
      ? []
      : [
          headOf("what", "before", "after"),
          ...cuts.map(({ name, before, after }) => [words(name), words(before ?? "none"), words(after ?? "none")]),
        ],
  sentences: [],
});

const valueSection = ({ comparison: { values } }: Review): Section => ({
  heading: "Values",
  remark: "",
  rows:
    values.length === 0
      ? []
      : [
          headOf("name", "before", "after"),
          ...values.map(({ name, words: told }) => [
            words(name),
            told.before === null ? words("none", "quiet") : amount(told.before),
            told.after === null ? words("none", "quiet") : amount(told.after),
          ]),
        ],
  sentences: [],
});
