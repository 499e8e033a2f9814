// Where a queue is, out of what was written behind --queue. A password is taken from it or from the environment, and is never shown.

/** How to reach a Redis server, and how it is called where anybody may read it. */
export interface RedisAddress {
  readonly connection: {
    readonly host: string;
    readonly port: number;
    readonly db: number;
    readonly username?: string;
    readonly password?: string;
    /** Over TLS, as rediss:// asks for; the server's certificate is checked. */
    readonly tls?: Readonly<Record<string, never>>;
  };
  readonly shown: string;
}

/** The variable of the environment that a password may stand in, so that it is in no list of processes. */
export const passwordVariable = "CHALKLINE_QUEUE_PASSWORD";

/** Reads redis://[user[:password]@]host[:port][/number], or rediss:// for TLS. What it refuses it does not repeat. */
export const redisAddress = (
  written: string,
  passwordGiven: string | undefined,
): RedisAddress | { readonly problem: string } => {
  const problem = "--queue takes the address of a Redis server, such as redis://127.0.0.1:6379, or rediss:// for TLS.";
  let url: URL;
  try {
    url = new URL(written);
  } catch {
    return { problem };
  }
  const number = /^\/?(\d{0,4})$/.exec(url.pathname);
  if ((url.protocol !== "redis:" && url.protocol !== "rediss:") || url.hostname === "" || !number) return { problem };
  if (url.search !== "" || url.hash !== "") return { problem };
  const port = url.port === "" ? usualPort : Number(url.port);
  const password = url.password === "" ? passwordGiven : decoded(url.password);
  const db = Number(number[1]);
  return {
    connection: {
      // An address of version 6 stands in brackets in an URL, and without them everywhere else.
      host: url.hostname.replace(/^\[|\]$/g, ""),
      port,
      db,
      ...(url.username !== "" && { username: decoded(url.username) }),
      ...(password !== undefined && password !== "" && { password }),
      ...(url.protocol === "rediss:" && { tls: {} }),
    },
    shown: `${url.protocol}//${url.hostname}:${port}${db === 0 ? "" : `/${db}`}`,
  };
};

const usualPort = 6379;

const decoded = (part: string): string => {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
};
