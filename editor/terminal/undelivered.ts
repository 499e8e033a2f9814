// What becomes of a command whose words cannot be delivered: whoever read them has stopped (`chalkline measure coat.chalk | head -3`),
// or they go to a disk that is full. The command comes to its end in both cases, for it may still have files to write.
import { whyRefused } from "../files/why-refused.ts";
import { paperOn } from "./paper.ts";
import { exitCode, refusal } from "./told.ts";

/** Both streams of a program, watched from now on. */
export interface Watched {
  /** The code that a command ends with after all: its own, unless words of it were lost. */
  codeAfter(code: number): number;
}

/** Watches standard output and the other stream; one that fails is said so on the one that is left. */
export const watched = (out: NodeJS.WriteStream, err: NodeJS.WriteStream): Watched => {
  const lost = new Set<NodeJS.WriteStream>();
  const failed = (stream: NodeJS.WriteStream, called: string, error: unknown): void => {
    // Whoever has read enough is content, and the code tells what the command found all the same.
    if (isReaderGone(error)) return;
    if (lost.has(stream)) return;
    lost.add(stream);
    process.exitCode = exitCode.unreadable;
    const why = whyRefused(error) ?? "the system does not say why";
    if (stream === out && !lost.has(err)) paperOn(err, false).say(refusal(`${called} cannot be written: ${why}.`));
  };
  out.on("error", (error) => failed(out, "Standard output", error));
  err.on("error", (error) => failed(err, "Standard error", error));
  return { codeAfter: (code) => (lost.size > 0 ? exitCode.unreadable : code) };
};

// A stream whose reader has gone says so once, and then that it is closed.
const isReaderGone = (error: unknown): boolean =>
  error instanceof Error &&
  "code" in error &&
  (error.code === "EPIPE" || error.code === "ERR_STREAM_DESTROYED" || error.code === "ERR_STREAM_WRITE_AFTER_END");
