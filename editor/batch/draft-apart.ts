// A chunk drafted in a thread that may die over it: one row of it is given up, and the others go on.
import { type Answer, answerText, chunkIn, chunkText, ownAnswer, type RowAnswer } from "./chunk.ts";
import type { ChunkTask } from "./draft-chunk.ts";
import { notWorked } from "./not-worked.ts";

/**
 * Drafts a chunk. Where its thread dies on the way (it ran out of memory, say), the rows are drafted one by one, so that only the
 * row that kills a thread is given up. `over` says why nothing more is to be drafted, once that is so.
 */
export const draftApart = async (
  run: (task: ChunkTask) => Promise<string>,
  task: ChunkTask,
  over: () => Answer | undefined,
): Promise<string> => {
  try {
    return await run(task);
  } catch (error) {
    const end = over();
    if (end) return answerText(end);
    const rows = chunkIn(task.chunk);
    const [row, ...others] = rows;
    if (row && others.length === 0) {
      const words = error instanceof Error ? error.message : String(error);
      const message = `${task.table}, row ${row.row}: the thread that drafted it died: ${words}`;
      return answerText({ rows: [notWorked(row, task.table, message)] });
    }
    const answers: RowAnswer[] = [];
    for (const each of rows) {
      const answer = ownAnswer(await draftApart(run, { ...task, chunk: chunkText([each]) }, over));
      if (!("rows" in answer)) return answerText(answer);
      answers.push(...answer.rows);
    }
    return answerText({ rows: answers });
  }
};
