// Requests to the server: who may come in, asked of the doors alone, and a real server on this machine that is sent anything.
import { mkdtempSync, rmSync } from "node:fs";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { recipeFolder } from "../../../editor/files/recipe-folder.ts";
import { type House, type Knock, turnedAway } from "../../../editor/server/doors.ts";
import { type Served, serve } from "../../../editor/server/serve.ts";
import { holds, type Target } from "../target.ts";

/** The target of the doors, around what judges a knock. */
export const knockingAt = (judge: typeof turnedAway): Target => ({
  name: "knock",
  run({ text }) {
    const parts = partsOf(text);
    const house: House = { hosts: ["127.0.0.1:4000", "localhost:4000"], token: "right" };
    for (let dice = 0; dice < 64; dice += 1) {
      const picked = <Each>(bit: number, right: Each, wrong: Each): Each => ((dice >> bit) & 1 ? right : wrong);
      const knock: Knock = {
        method: picked(0, "GET", parts[0]!),
        path: picked(1, "/api/recipe", `/${parts[1]!}`),
        host: picked(2, "127.0.0.1:4000", parts[2]!),
        origin: picked(3, undefined, parts[3]!),
        site: picked(4, "same-origin", parts[0]!),
        authorization: picked(5, "Bearer right", parts[1]!),
      };
      if (judge(knock, house) !== undefined) continue;
      holds(house.hosts.includes(knock.host ?? ""), "a request for another server is let in", JSON.stringify(knock));
      holds(
        !knock.path.startsWith("/api/") || knock.authorization === "Bearer right",
        "a request without the token is let in",
        JSON.stringify(knock),
      );
      holds(
        knock.origin === undefined || house.hosts.some((host) => knock.origin === `http://${host}`),
        "another page is let in",
        JSON.stringify(knock),
      );
    }
  },
});

export const knocking = knockingAt(turnedAway);

/** Four stretches of a text, the same for the same text. */
const partsOf = (text: string): readonly string[] => {
  const lines = text.split("\n");
  return [0, 1, 2, 3].map((index) => lines[(text.length * (index + 1) + index) % lines.length]!);
};

/** A server of an empty folder that is sent what the recipe says as requests, and then saves and reads the recipe. */
export const serving = (): Target => {
  let open: { readonly served: Served; readonly folder: string } | undefined;
  const opened = async () => {
    if (open) return open;
    const folder = mkdtempSync(join(tmpdir(), "chalkline-fuzz-"));
    const page = new Map([["/index.html", { type: "text/html", bytes: Buffer.from("<p>page</p>") }]]);
    open = { served: await serve(recipeFolder(folder), page, "default-src 'none'", token, 0), folder };
    return open;
  };
  return {
    name: "serve",
    isDear: true,
    async run({ text }) {
      const { served, folder } = await opened();
      const { port } = served;
      const [a, b, c, d] = partsOf(text);
      const here = `Host: 127.0.0.1:${port}`;
      const close = "Connection: close";
      const raw = [
        [`${a} /${b} HTTP/1.1`, here, c!, close],
        [`GET /api/recipe?file=${b} HTTP/1.1`, here, `Authorization: Bearer ${c}`, `X: ${d}`, close],
        [`GET /api/recipe?file=${encoded(b!)} HTTP/1.1`, here, `Authorization: Bearer ${token}`, close],
        [
          `PUT /api/recipe?file=${encoded(c!)} HTTP/1.1`,
          here,
          `Authorization: Bearer ${token}`,
          "Content-Length: 1",
          close,
        ],
      ];
      for (const [index, lines] of raw.entries()) {
        const { status } = await answered(port, `${lines.join("\r\n")}\r\n\r\n${index === 3 ? "{" : ""}`);
        holds(status >= 200 && status < 500, "the server answers with an error of its own", `${status} to ${lines[0]}`);
        if (index === 1) holds(status !== 200, "a request without the token is answered");
      }
      await refusesBodies(port, [
        a!,
        JSON.stringify(b),
        JSON.stringify({ text: 1, was: c }),
        JSON.stringify({ text: d }),
      ]);
      await answersAll(port);
      await keeps(port, folder, text);
    },
    async end() {
      if (!open) return;
      await open.served.close();
      rmSync(open.folder, { recursive: true });
      open = undefined;
    },
  };
};

const token = "token-of-this-run";

const headOf = (method: string, path: string, port: number): string =>
  `${method} ${path} HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nAuthorization: Bearer ${token}\r\nConnection: close\r\n`;

/** Throws where a body that asks for nothing is not refused as such. */
const refusesBodies = async (port: number, bodies: readonly string[]): Promise<void> => {
  for (const body of bodies) {
    const head = headOf("PUT", "/api/recipe?file=other.chalk", port);
    const { status } = await answered(port, `${head}Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
    holds(status === 400, "a body that asks for nothing is not refused", `${status} to ${body.slice(0, 60)}`);
  }
};

/** Throws where the list of recipes, their marks or the page itself is not to be had. */
const answersAll = async (port: number): Promise<void> => {
  for (const path of ["/api/recipes", "/api/marks", "/"]) {
    const { status, body } = await answered(port, `${headOf("GET", path, port)}\r\n`);
    holds(status === 200, "what the server offers is not to be had", `${status} to ${path}`);
    if (path !== "/") JSON.parse(body);
  }
  const nothing = await answered(port, `${headOf("GET", "/api/other", port)}\r\n`);
  holds(nothing.status === 404, "what the server does not offer is answered", `${nothing.status}`);
};

/** Throws unless what is saved in a new file is what is read, and unless whoever did not know of it is told that it differs. */
const keeps = async (port: number, folder: string, text: string): Promise<void> => {
  const body = JSON.stringify({ text, was: null });
  const head = (method: string): string => headOf(method, "/api/recipe?file=kept.chalk", port);
  try {
    const saved = await answered(port, `${head("PUT")}Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
    holds([200, 400].includes(saved.status), "a recipe is not saved", `${saved.status} ${saved.body}`);
    if (saved.status !== 200) return;
    const read = await answered(port, `${head("GET")}\r\n`);
    holds(read.status === 200, "a saved recipe is not read", `${read.status} ${read.body}`);
    const kept = (JSON.parse(read.body) as { text: string }).text;
    holds(kept === wellFormed(text), "a recipe is read otherwise than it was saved");
    const other = JSON.stringify({ text: `${text}#`, was: null });
    const again = await answered(port, `${head("PUT")}Content-Length: ${Buffer.byteLength(other)}\r\n\r\n${other}`);
    // A text that grew past what a recipe may hold is refused for that.
    holds([409, 400].includes(again.status), "a recipe is written over unseen", `${again.status} ${again.body}`);
  } finally {
    rmSync(join(folder, "kept.chalk"), { force: true });
  }
};

/** The text as UTF-8 can hold it: a lone surrogate is U+FFFD in it. */
const wellFormed = (text: string): string => Buffer.from(text, "utf8").toString("utf8");

const encoded = (text: string): string => encodeURIComponent(wellFormed(text));

const answered = (port: number, request: string): Promise<{ status: number; body: string }> =>
  new Promise((resolve, reject) => {
    const socket = connect(port, "127.0.0.1");
    const parts: Buffer[] = [];
    socket.setTimeout(5000, () => socket.destroy(new Error("The server does not answer.")));
    socket.on("data", (part) => parts.push(part));
    socket.on("error", reject);
    socket.on("close", () => {
      const whole = Buffer.concat(parts).toString("utf8");
      const [head = "", body = ""] = [
        whole.slice(0, whole.indexOf("\r\n\r\n")),
        whole.slice(whole.indexOf("\r\n\r\n") + 4),
      ];
      const text = /transfer-encoding: chunked/i.test(head) ? body.replace(/(?:^|\r\n)[0-9a-f]+\r\n/gi, "") : body;
      resolve({ status: Number(/^HTTP\/1\.1 (\d{3})/.exec(head)?.[1] ?? 0), body: text });
    });
    socket.end(request);
  });
