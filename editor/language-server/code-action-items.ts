// Code actions as an editor offers them. One that has to be tried first is tried when it is picked.
import type { CodeAction as Item, Range } from "vscode-languageserver/node";
import type { CodeAction } from "../assist/actions/code-action.ts";
import { codeActions, tried } from "../assist/code-actions.ts";
import { changeOf, documentAt } from "./stretches.ts";
import type { WorkedDocument } from "./worked-documents.ts";
import type { Workroom } from "./workroom.ts";

/** What an editor can do with an action. */
export interface ActionReader {
  /** It asks again when an action is picked. */
  readonly resolves: boolean;
  /** It shows why an action cannot be done. */
  readonly showsRefused: boolean;
}

/** What is kept of an action until it is picked. */
interface Asked {
  readonly uri: string;
  readonly range: Range;
  readonly title: string;
}

/** What can be done in a range; only those of the kinds that are asked for, where the editor asks for some. */
export const codeActionItems = (
  open: WorkedDocument,
  range: Range,
  only: readonly string[] | undefined,
  room: Workroom,
  reader: ActionReader,
): Item[] =>
  actionsIn(open, range, room)
    .filter(({ kind }) => !only || only.some((wanted) => kind === wanted || kind.startsWith(`${wanted}.`)))
    .map((action) => (action.isUntried && !reader.resolves ? tried(open.worked, action) : action))
    .filter(({ refused }) => refused === undefined || reader.showsRefused)
    .map((action) => itemOf(action, open, range, room));

/** An action that was picked, ready to be done; one that cannot be, with the reason and no change. */
export const resolvedAction = (open: WorkedDocument, item: Item, room: Workroom): Item => {
  const { range, title } = item.data as Asked;
  const action = actionsIn(open, range, room).find((each) => each.title === title);
  if (!action) return item;
  const done = tried(open.worked, action);
  const { data: _, ...kept } = item;
  if (done.refused !== undefined) return { ...kept, disabled: { reason: done.refused }, edit: { changes: {} } };
  return { ...kept, edit: changeOf(done.edits, (file) => documentAt(room, open, file)) };
};

/** The document that a picked action belongs to; undefined for what is no action of ours. */
export const uriAsked = ({ data }: Item): string | undefined =>
  typeof data === "object" && data !== null && "uri" in data && typeof data.uri === "string" ? data.uri : undefined;

const actionsIn = (
  { document, place, worked }: WorkedDocument,
  { start, end }: Range,
  room: Workroom,
): CodeAction[] => {
  const [from, to] = [document.offsetAt(start), document.offsetAt(end)];
  // Others matter only to a selection, out of which names could be taken.
  const others = from === to ? [] : room.recipesAround(place);
  return codeActions(worked, from, to, others);
};

const itemOf = (action: CodeAction, open: WorkedDocument, range: Range, room: Workroom): Item => {
  const { title, kind, edits, refused, isUntried } = action;
  if (refused !== undefined) return { title, kind, disabled: { reason: refused } };
  const asked: Asked = { uri: open.document.uri, range, title };
  if (isUntried) return { title, kind, data: asked };
  return { title, kind, edit: changeOf(edits, (file) => documentAt(room, open, file)) };
};
