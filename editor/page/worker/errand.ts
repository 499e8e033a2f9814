// An errand: one question to a program of its own, which ends with the answer and gives its memory back. For what is seldom
// wanted, may take long, and must not hold up the drawing.
import { openProgram, type Program } from "./open-program.ts";

type Returned<Answer> = { readonly answer: Answer } | { readonly failed: string };

/** Sends a program on an errand; rejects with words where it cannot be loaded, fails, or takes longer than so many ms. */
export const errand = async <Asked, Answer>(name: Program, asked: Asked, longest: number): Promise<Answer> => {
  const worker = await openProgram(name);
  let timer: ReturnType<typeof setTimeout> | undefined;
  try {
    return await new Promise<Answer>((resolve, reject) => {
      timer = setTimeout(() => reject(new Error("It took too long and was stopped.")), longest);
      worker.onerror = ({ message }) => reject(new Error(message));
      worker.onmessage = ({ data }: MessageEvent<Returned<Answer>>) => {
        if ("failed" in data) reject(new Error(data.failed));
        else resolve(data.answer);
      };
      worker.postMessage(asked);
    });
  } finally {
    clearTimeout(timer);
    worker.terminate();
  }
};

/** The other end: answers the one question. What goes wrong is ours, for whatever is the matter with a file is an answer. */
export const run = <Asked, Answer>(answer: (asked: Asked) => Answer | Promise<Answer>): void => {
  const speak = (returned: Returned<Answer>): void => (self as unknown as Worker).postMessage(returned);
  self.onmessage = async ({ data }: MessageEvent<Asked>) => {
    try {
      speak({ answer: await answer(data) });
    } catch (error) {
      speak({ failed: error instanceof Error ? error.message : String(error) });
    }
  };
};
