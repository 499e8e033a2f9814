// Who may come in. The server listens on this machine only, but every page that the user's browser has open could try it too:
// so each request must name this very server, come from its own page, and, for everything but the page itself, carry the
// token of this run.
import { timingSafeEqual } from "node:crypto";

/** What is known of a request before anything is done for it. */
export interface Knock {
  readonly method: string;
  readonly path: string;
  readonly host: string | undefined;
  readonly origin: string | undefined;
  /** The browser's own word on where the request comes from: "same-origin", "cross-site" … */
  readonly site: string | undefined;
  readonly authorization: string | undefined;
}

export interface House {
  /** Hosts that this server is called by, with the port. */
  readonly hosts: readonly string[];
  readonly token: string;
}

/** The status and the words by which a request is turned away; undefined lets it in. */
export const turnedAway = (knock: Knock, { hosts, token }: House): { status: number; words: string } | undefined => {
  if (knock.host === undefined || !hosts.includes(knock.host))
    return { status: 421, words: "This is not the server you asked for." };
  // A page under another name may be shown what ours holds, or made to write it: neither is let in.
  if (knock.origin !== undefined && !hosts.some((host) => knock.origin === `http://${host}`))
    return { status: 403, words: "Another page may not ask this server." };
  const isPage = !knock.path.startsWith("/api/");
  const sites = isPage ? ["same-origin", "none"] : ["same-origin"];
  if (knock.site !== undefined && !sites.includes(knock.site))
    return { status: 403, words: "Another page may not ask this server." };
  if (isPage) {
    return knock.method === "GET" || knock.method === "HEAD"
      ? undefined
      : { status: 405, words: "The page can only be read." };
  }
  if (!isSame(knock.authorization, `Bearer ${token}`))
    return { status: 401, words: "Open the page by the address that the terminal shows." };
  return undefined;
};

const isSame = (given: string | undefined, wanted: string): boolean => {
  if (given === undefined) return false;
  const [a, b] = [Buffer.from(given), Buffer.from(wanted)];
  return a.length === b.length && timingSafeEqual(a, b);
};
