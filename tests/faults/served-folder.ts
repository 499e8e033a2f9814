// `chalkline edit` on a folder, asked as its page asks it.
import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { program } from "../terminal/chalkline.ts";
import { type Fault, faultyNode } from "./faulty.ts";

export interface ServedFolder {
  readonly server: ChildProcess;
  /** What the program has said on its second stream so far. */
  said(): string;
  /** Asks for something of the api; undefined where nobody answers any more. */
  ask(path: string, body?: object): Promise<{ readonly status: number; readonly body: Answer } | undefined>;
  save(file: string, text: string, was: string | null): ReturnType<ServedFolder["ask"]>;
  /** Asks it to end, and waits until it has. */
  end(): Promise<void>;
}

export interface Answer {
  readonly text?: string;
  readonly mark?: string;
  readonly differs?: { readonly text: string; readonly mark: string } | null;
  readonly problem?: { readonly code: string; readonly message: string };
  readonly recipes?: readonly { readonly file: string }[];
  readonly marks?: readonly (readonly [string, string])[];
}

/** Serves a folder, with a fault where one is given. */
export const serveFolder = async (folder: string, fault?: Fault): Promise<ServedFolder> => {
  const { args, env } = fault ? faultyNode(folder, fault) : { args: [program], env: { PATH: process.env.PATH } };
  const server = spawn(process.execPath, [...args, "edit", folder], { cwd: folder, env });
  let [told, complained] = ["", ""];
  server.stderr.on("data", (chunk: Buffer) => {
    complained += chunk;
  });
  const address = await new Promise<string>((resolve, reject) => {
    server.stdout.on("data", (chunk: Buffer) => {
      told += chunk;
      const found = /http:\/\/\S+/.exec(told);
      if (found) resolve(found[0]);
    });
    server.on("exit", () => reject(new Error(`the server did not start: ${complained}`)));
  });
  const url = new URL(address);
  const token = new URLSearchParams(url.hash.slice(1)).get("token");
  const ask: ServedFolder["ask"] = async (path, body) => {
    try {
      const response = await fetch(new URL(path, url), {
        headers: { Authorization: `Bearer ${token}`, Connection: "close" },
        ...(body && { method: "PUT", body: JSON.stringify(body) }),
      });
      return { status: response.status, body: (await response.json()) as Answer };
    } catch {
      return undefined;
    }
  };
  return {
    server,
    said: () => complained,
    ask,
    save: (file, text, was) => ask(`/api/recipe?file=${encodeURIComponent(file)}`, { text, was }),
    async end() {
      if (server.exitCode !== null || server.signalCode !== null) return;
      const gone = once(server, "exit");
      server.kill();
      await gone;
    },
  };
};
