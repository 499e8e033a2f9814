// The local server against everybody who is not its own page: hosts, origins, tokens, methods, upgrades and paths, asked with
// raw requests that no browser would smooth over.
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { recipeFolder } from "../../editor/files/recipe-folder.ts";
import { type PageFile, type Served, serve } from "../../editor/server/serve.ts";

const token = "a-token-of-this-run";
const policy = "default-src 'none'";
const page = new Map<string, PageFile>([
  ["/index.html", { type: "text/html; charset=utf-8", bytes: new TextEncoder().encode("<!doctype html>") }],
]);

let folder: string;
let served: Served;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "chalkline-server-"));
  mkdirSync(join(folder, "recipes/blocks"), { recursive: true });
  writeFileSync(join(folder, "recipes/coat.chalk"), "chalkline 1\n");
  writeFileSync(join(folder, "recipes/blocks/block.chalk"), "chalkline 1\n");
  writeFileSync(join(folder, "recipes/notes.txt"), "not for the page");
  writeFileSync(join(folder, "secret.chalk"), "chalkline 1 # outside\n");
  symlinkSync(join(folder, "secret.chalk"), join(folder, "recipes/link.chalk"));
  symlinkSync(join(folder, "recipes/notes.txt"), join(folder, "recipes/renamed.chalk"));
  served = await serve(recipeFolder(join(folder, "recipes")), page, policy, token, 0);
});

afterAll(async () => {
  await served.close();
  rmSync(folder, { recursive: true });
});

interface Answer {
  readonly status: number;
  readonly headers: NodeJS.Dict<string | string[]>;
  readonly body: string;
}

const ask = (
  path: string,
  headers: Record<string, string> = {},
  { method = "GET", body }: { method?: string; body?: string } = {},
): Promise<Answer> =>
  new Promise((resolve, reject) => {
    const sent = request(
      { host: "127.0.0.1", port: served.port, path, method, headers: { host: `127.0.0.1:${served.port}`, ...headers } },
      (response) => {
        const chunks: Buffer[] = [];
        response.on("data", (chunk: Buffer) => chunks.push(chunk));
        response.on("end", () =>
          resolve({
            status: response.statusCode ?? 0,
            headers: response.headers,
            body: Buffer.concat(chunks).toString("utf8"),
          }),
        );
      },
    );
    sent.on("error", reject);
    sent.end(body);
  });

const ours = (): Record<string, string> => ({ authorization: `Bearer ${token}` });
const put = (file: string, text: string, was: string | null): Promise<Answer> =>
  ask(`/api/recipe?file=${encodeURIComponent(file)}`, ours(), { method: "PUT", body: JSON.stringify({ text, was }) });
const markOfFile = async (file: string): Promise<string> =>
  (JSON.parse((await ask(`/api/recipe?file=${file}`, ours())).body) as { mark: string }).mark;

test("its own page gets in: by either name of this machine, with its token", async () => {
  expect((await ask("/")).status).toBe(200);
  expect((await ask("/", { host: `localhost:${served.port}` })).status).toBe(200);
  const listed = await ask("/api/recipes", {
    ...ours(),
    origin: `http://127.0.0.1:${served.port}`,
    "sec-fetch-site": "same-origin",
  });
  expect(listed.status).toBe(200);
  const { recipes } = JSON.parse(listed.body) as { recipes: { file: string }[] };
  expect(recipes.map(({ file }) => file)).toEqual(["blocks/block.chalk", "coat.chalk"]);
});

test("every mixture of host, origin, site and token but the right one stays outside, whatever the method", async () => {
  const right = `127.0.0.1:${served.port}`;
  // A name that somebody else's name server points at this machine is the case that a check of the address misses.
  const hosts = [right, "rebound.example:80", `rebound.example:${served.port}`, "127.0.0.1", "127.0.0.1:1", "[::1]"];
  const origins = [
    undefined,
    `http://${right}`,
    "http://rebound.example",
    "null",
    `https://${right}`,
    "http://127.0.0.1:1",
  ];
  const sites = [undefined, "same-origin", "cross-site", "same-site", "none"];
  const tokens = [undefined, `Bearer ${token}`, "Bearer ", `Bearer ${token}x`, token];
  const let_in: string[] = [];
  let tried = 0;
  for (const method of ["GET", "PUT", "POST", "OPTIONS", "DELETE"]) {
    for (const host of hosts) {
      for (const origin of origins) {
        for (const site of sites) {
          for (const authorization of tokens) {
            tried += 1;
            const headers = {
              host,
              ...(origin !== undefined && { origin }),
              ...(site !== undefined && { "sec-fetch-site": site }),
              ...(authorization !== undefined && { authorization }),
            };
            const { status, headers: said } = await ask("/api/recipe?file=coat.chalk", headers, { method });
            expect(said["access-control-allow-origin"]).toBeUndefined();
            if (status === 200) let_in.push([method, host, origin, site, authorization].join(" "));
          }
        }
      }
    }
  }
  expect(tried).toBe(5 * hosts.length * origins.length * sites.length * tokens.length);
  expect(let_in.sort()).toEqual(
    [undefined, `http://${right}`]
      .flatMap((origin) =>
        [undefined, "same-origin"].map((site) => ["GET", right, origin, site, `Bearer ${token}`].join(" ")),
      )
      .sort(),
  );
});

test("an upgrade is refused, with or without the token", async () => {
  for (const more of ["", `Authorization: Bearer ${token}\r\n`]) {
    const answer = await new Promise<string>((resolve) => {
      const socket = connect(served.port, "127.0.0.1", () =>
        socket.write(
          `GET /api/recipes HTTP/1.1\r\nHost: 127.0.0.1:${served.port}\r\n${more}Connection: Upgrade\r\nUpgrade: websocket\r\nSec-WebSocket-Version: 13\r\nSec-WebSocket-Key: AAAAAAAAAAAAAAAAAAAAAA==\r\n\r\n`,
        ),
      );
      let heard = "";
      socket.on("data", (chunk) => {
        heard += chunk;
      });
      socket.on("close", () => resolve(heard));
    });
    expect(answer).toMatch(/^HTTP\/1\.1 426 /);
  }
});

test("only recipes under the folder are read or written", async () => {
  const outside = [
    "../secret.chalk",
    "/etc/passwd",
    "notes.txt",
    "link.chalk",
    "renamed.chalk",
    "blocks/../../secret.chalk",
    "C:/coat.chalk",
    "http://127.0.0.1/coat.chalk",
    "coat.chalk\0",
    "blocks\\block.chalk",
    "",
    "new/folder.chalk",
  ];
  for (const file of outside) {
    const read = await ask(`/api/recipe?file=${encodeURIComponent(file)}`, ours());
    expect(read.status, `reading ${file}`).toBe(404);
    expect(read.body).not.toContain("outside\\n");
    const written = await put(file, "chalkline 1 # written\n", null);
    expect(written.status, `writing ${file}`).not.toBe(200);
  }
  expect(readFileSync(join(folder, "secret.chalk"), "utf8")).toBe("chalkline 1 # outside\n");
  expect(readFileSync(join(folder, "recipes/notes.txt"), "utf8")).toBe("not for the page");
  for (const path of ["/../package.json", "/%2e%2e/package.json", "/recipes/coat.chalk", "//etc/passwd"])
    expect((await ask(path)).status).toBe(404);
});

test("a file is saved whole when the disk holds what the page thinks, and otherwise what it holds is told", async () => {
  const first = await markOfFile("coat.chalk");
  const saved = await put("coat.chalk", "chalkline 1\nunits cm\n", first);
  expect(saved.status).toBe(200);
  expect(readFileSync(join(folder, "recipes/coat.chalk"), "utf8")).toBe("chalkline 1\nunits cm\n");
  const late = await put("coat.chalk", "chalkline 1\nunits in\n", first);
  expect(late.status).toBe(409);
  expect(JSON.parse(late.body)).toMatchObject({ differs: { text: "chalkline 1\nunits cm\n" } });
  expect(readFileSync(join(folder, "recipes/coat.chalk"), "utf8")).toBe("chalkline 1\nunits cm\n");
  // Somebody has taken the file away: nobody is to be surprised by its coming back.
  rmSync(join(folder, "recipes/coat.chalk"));
  const gone = await put("coat.chalk", "chalkline 1\n", await Promise.resolve("any"));
  expect(gone.status).toBe(409);
  expect(JSON.parse(gone.body)).toEqual({ differs: null });
  expect((await put("coat.chalk", "chalkline 1\n", null)).status).toBe(200);
  expect(readdirSync(join(folder, "recipes")).filter((name) => name.startsWith(".chalkline"))).toEqual([]);
});

test("marks tell every change, and only of recipes that can be read", async () => {
  const marks = async (): Promise<Map<string, string>> =>
    new Map((JSON.parse((await ask("/api/marks", ours())).body) as { marks: [string, string][] }).marks);
  const first = await marks();
  expect([...first.keys()]).toEqual(["blocks/block.chalk", "coat.chalk"]);
  expect(first.get("coat.chalk")).toBe(await markOfFile("coat.chalk"));
  expect(await marks()).toEqual(first);
  // As many letters as before, and written by somebody else.
  writeFileSync(join(folder, "recipes/coat.chalk"), "chalkline 2\n");
  const second = await marks();
  expect(second.get("coat.chalk")).not.toBe(first.get("coat.chalk"));
  expect(second.get("coat.chalk")).toBe(await markOfFile("coat.chalk"));
  expect(second.get("blocks/block.chalk")).toBe(first.get("blocks/block.chalk"));
  writeFileSync(join(folder, "recipes/coat.chalk"), "chalkline 1\n");
  expect(await marks()).toEqual(first);
});

test("what cannot be read is told in words, and the server goes on", async () => {
  const wrong = [
    "",
    "{",
    "[]",
    '{"text":1,"was":null}',
    '{"text":"a"}',
    `{"text":"${"a".repeat(8_000_000)}","was":null}`,
  ];
  for (const body of wrong) {
    const { status } = await ask("/api/recipe?file=coat.chalk", ours(), { method: "PUT", body });
    expect(status).toBe(400);
  }
  expect((await put("coat.chalk", "#".repeat(1024 * 1024 + 1), await markOfFile("coat.chalk"))).status).toBe(400);
  expect((await ask("/api/recipes", ours())).status).toBe(200);
});

test("every answer forbids frames, other scripts and guessing of types, and nothing is kept by caches", async () => {
  for (const { headers } of [
    await ask("/"),
    await ask("/api/recipes", ours()),
    await ask("/none"),
    await ask("/api/recipes"),
  ]) {
    expect(headers["content-security-policy"]).toContain("default-src 'none'");
    expect(headers["content-security-policy"]).toContain("frame-ancestors 'none'");
    expect(headers["x-content-type-options"]).toBe("nosniff");
    expect(headers["cache-control"]).toBe("no-store");
  }
});
