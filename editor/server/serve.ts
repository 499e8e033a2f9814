// Serves the page and one folder of recipes on this machine: loopback only, nothing but the page's own files and .chalk files.
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import { limits } from "../../grammar/limits.ts";
import type { RecipeFolder } from "../files/recipe-folder.ts";
import { whyRefused } from "../files/why-refused.ts";
import { type House, type Knock, turnedAway } from "./doors.ts";

/** A file of the page as it is sent. */
export interface PageFile {
  readonly type: string;
  readonly bytes: Uint8Array;
}

export interface Served {
  readonly server: Server;
  readonly port: number;
  close(): Promise<void>;
}

/**
 * Serves until closed. `page` holds the page's files by path, `policy` is its content security policy; `token` opens the
 * folder. Port 0 takes any that is free.
 */
export const serve = async (
  folder: RecipeFolder,
  page: ReadonlyMap<string, PageFile>,
  policy: string,
  token: string,
  port: number,
): Promise<Served> => {
  let house: House = { hosts: [], token };
  const server = createServer((request, response) => {
    respond(request, response, house, folder, page, policy).catch(() => {
      // The other end has gone, or the disk failed in a way that no answer covers: this request ends, the server goes on.
      if (!response.headersSent) say(response, 500, { message: "That could not be done." }, policy);
      else response.destroy();
    });
  });
  // Nothing here is spoken over an upgraded connection.
  server.on("upgrade", (_request, socket) => socket.end("HTTP/1.1 426 Upgrade Required\r\nConnection: close\r\n\r\n"));
  server.headersTimeout = 10_000;
  server.requestTimeout = 30_000;
  await new Promise<void>((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, "127.0.0.1", resolve);
  });
  const address = server.address();
  const taken = typeof address === "object" && address ? address.port : port;
  house = { hosts: [`127.0.0.1:${taken}`, `localhost:${taken}`], token };
  return {
    server,
    port: taken,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
};

const respond = async (
  request: IncomingMessage,
  response: ServerResponse,
  house: House,
  folder: RecipeFolder,
  page: ReadonlyMap<string, PageFile>,
  policy: string,
): Promise<void> => {
  const knock = knockOf(request);
  const refused = turnedAway(knock, house);
  if (refused) {
    say(response, refused.status, { message: refused.words }, policy);
    request.resume();
    return;
  }
  if (!knock.path.startsWith("/api/")) {
    const file = page.get(knock.path === "/" ? "/index.html" : knock.path);
    if (!file) say(response, 404, { message: "There is no such file." }, policy);
    else {
      response.writeHead(200, { ...headers(policy), "Content-Type": file.type, "Content-Length": file.bytes.length });
      response.end(knock.method === "HEAD" ? undefined : file.bytes);
    }
    return;
  }
  const file = new URL(request.url ?? "/", "http://localhost").searchParams.get("file") ?? "";
  switch (`${knock.method} ${knock.path}`) {
    case "GET /api/recipes":
      say(response, 200, { folder: folder.name, recipes: folder.all() }, policy);
      return;
    case "GET /api/marks":
      say(response, 200, { marks: [...folder.marks()] }, policy);
      return;
    case "GET /api/recipe": {
      const found = folder.read(file);
      say(response, "problem" in found ? 404 : 200, found, policy);
      return;
    }
    case "PUT /api/recipe":
      await put(request, response, file, folder, policy);
      return;
    default:
      say(response, 404, { message: "There is no such thing to ask for." }, policy);
  }
};

/** Saves the text in a request's body, given what the page last knew to be on the disk. */
const put = async (
  request: IncomingMessage,
  response: ServerResponse,
  file: string,
  folder: RecipeFolder,
  policy: string,
): Promise<void> => {
  // JSON writes a letter in at most six bytes.
  const body = await bodyOf(request, limits.fileBytes * 6 + 1000);
  const asked = body === undefined ? undefined : readAsked(body);
  if (!asked) {
    say(response, 400, { message: "What is to be saved could not be read." }, policy);
    return;
  }
  try {
    const saved = folder.save(file, asked.text, asked.was);
    say(response, "mark" in saved ? 200 : "differs" in saved ? 409 : 400, saved, policy);
  } catch (error) {
    const why = whyRefused(error);
    if (why === undefined) throw error;
    say(
      response,
      507,
      {
        problem: {
          code: "file-not-saved",
          message: `${file} was not saved: ${why}. Nothing on the disk was changed.`,
        },
      },
      policy,
    );
  }
};

const readAsked = (body: string): { readonly text: string; readonly was: string | null } | undefined => {
  try {
    const { text, was } = JSON.parse(body) as { text?: unknown; was?: unknown };
    return typeof text === "string" && (typeof was === "string" || was === null) ? { text, was } : undefined;
  } catch {
    return undefined;
  }
};

/** The body of a request; undefined when it is longer than it may be, and then it is read to its end all the same, so that the answer is heard. */
const bodyOf = async (request: IncomingMessage, most: number): Promise<string | undefined> => {
  let chunks: Buffer[] = [];
  let length = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    length += chunk.length;
    if (length > most) chunks = [];
    else chunks.push(chunk);
    // Somebody who sends without end is not listened to for ever.
    if (length > 8 * most) return undefined;
  }
  return length > most ? undefined : Buffer.concat(chunks).toString("utf8");
};

const knockOf = ({ method = "GET", url = "/", headers: said }: IncomingMessage): Knock => ({
  method,
  path: pathOf(url),
  host: said.host,
  origin: said.origin,
  site: one(said["sec-fetch-site"]),
  authorization: said.authorization,
});

const one = (value: string | string[] | undefined): string | undefined => (Array.isArray(value) ? value[0] : value);

const pathOf = (url: string): string => {
  const end = url.search(/[?#]/);
  return end === -1 ? url : url.slice(0, end);
};

const headers = (policy: string): Record<string, string> => ({
  "Content-Security-Policy": `${policy}; frame-ancestors 'none'`,
  "X-Content-Type-Options": "nosniff",
  "Referrer-Policy": "no-referrer",
  "Cross-Origin-Opener-Policy": "same-origin",
  "Cross-Origin-Resource-Policy": "same-origin",
  "Cache-Control": "no-store",
});

const say = (response: ServerResponse, status: number, what: unknown, policy: string): void => {
  response.writeHead(status, { ...headers(policy), "Content-Type": "application/json; charset=utf-8" });
  response.end(JSON.stringify(what));
};
