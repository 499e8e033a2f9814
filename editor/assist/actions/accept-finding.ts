// A finding of a built-in check, accepted: the line that waives it, with a reason for the pattern maker to write.
import type { Where } from "../../../grammar/diagnostic.ts";
import { lineOf, lineStarts } from "../../../grammar/source.ts";
import { changedIn } from "../../../kernel/record.ts";
import type { WorkedText } from "../worked-text.ts";
import { written } from "../written.ts";
import type { CodeAction } from "./code-action.ts";

/** What stands between the quotes until the reason is written. */
const reason = "say why it is right here";

/** One action for every judgement here that can be waived. */
export const acceptFinding = (worked: WorkedText, from: number, to: number): CodeAction[] => {
  const { outcome, kernel, source } = worked;
  const checks = new Set(kernel.vocabulary.checks.map(({ name }) => name));
  return outcome.judgements
    .filter(
      ({ check, verdict, where }) =>
        (verdict === "warning" || verdict === "error") &&
        checks.has(check) &&
        where.file === source.file &&
        where.from <= to &&
        from <= where.to,
    )
    .flatMap(({ check, on }) => acceptance(worked, check, on) ?? []);
};

const acceptance = (worked: WorkedText, check: string, on: string): CodeAction | undefined => {
  const { source, outcome } = worked;
  // "front.side with back.side at front.hem" is waived by the first edge it names.
  const [thing] = on.split(/ with | at |, /);
  const piece = outcome.garment.pieces.get(thing!.split(".")[0]!);
  if (!piece || piece.drawnBy.file !== source.file) return undefined;
  const at = behind(worked, piece.name);
  if (at === undefined) return undefined;
  const begin = `accept ${check} on ${thing} because "`;
  const end = source.text.startsWith("\r\n", source.text.indexOf("\n") - 1) ? "\r\n" : "\n";
  const isLast = at > 0 && source.text[at - 1] !== "\n";
  const edit = {
    file: source.file,
    from: at,
    to: at,
    text: `${isLast ? end : ""}${begin}${reason}"${isLast ? "" : end}`,
  };
  const start = at + (isLast ? end.length : 0) + begin.length;
  return {
    title: `Accept ${check} on ${thing}, with a reason`,
    kind: "quickfix",
    edits: [edit],
    select: { from: start, to: start + reason.length },
    code: check,
  };
};

/** The beginning of the line behind the last one that makes or alters a piece, and behind what is accepted there already. */
const behind = (worked: WorkedText, piece: string): number | undefined => {
  const { source, outcome } = worked;
  const altered = outcome.records.findLast((record) => changedIn(record, piece))?.where;
  const top = written(worked).lines.filter(({ around }) => around === undefined);
  let last = altered ? top.findLastIndex(({ from }) => from <= outermost(altered, source.file)) : -1;
  if (last < 0) return undefined;
  while (top[last + 1]?.verb === "accept") last += 1;
  const { to, block } = top[last]!;
  const starts = lineStarts(source.text);
  return starts[lineOf(starts, Math.min(block?.to ?? to, source.text.length))] ?? source.text.length;
};

/** Where in the recipe a line is worked: in a step of the recipe's own it is worked where that is called. */
const outermost = ({ file, from, calledBy }: Where, opened: string): number =>
  calledBy ? outermost(calledBy, opened) : file === opened ? from : -1;
