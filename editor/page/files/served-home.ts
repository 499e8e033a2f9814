// The folder that the local server has open, reached with the token of this run.
import type { Home, KeptHere, SavedHere } from "./home.ts";

/** The home behind the server that this page came from; a problem in words when it does not let us in. */
export const servedHome = async (token: string): Promise<Home | { readonly problem: string }> => {
  const ask = (path: string, more: RequestInit = {}): Promise<Response> =>
    fetch(path, { ...more, headers: { Authorization: `Bearer ${token}`, "Content-Type": "application/json" } });
  const lost =
    "The server cannot be reached any more: start chalkline edit again. What you typed is kept in this browser.";

  let first: { folder: string; recipes: KeptHere[] };
  try {
    const response = await ask("/api/recipes");
    if (!response.ok)
      return { problem: "This address is of an earlier run: open the one that the terminal shows now." };
    first = (await response.json()) as typeof first;
  } catch {
    return { problem: lost };
  }
  return {
    name: first.folder,
    saves: true,
    recipes: first.recipes,
    async marks() {
      try {
        const response = await ask("/api/marks");
        return response.ok ? new Map(((await response.json()) as { marks: [string, string][] }).marks) : undefined;
      } catch {
        return undefined;
      }
    },
    async read(file) {
      try {
        const response = await ask(`/api/recipe?file=${encodeURIComponent(file)}`);
        return response.ok ? ((await response.json()) as KeptHere) : undefined;
      } catch {
        return undefined;
      }
    },
    async save(file, text, was): Promise<SavedHere> {
      try {
        const response = await ask(`/api/recipe?file=${encodeURIComponent(file)}`, {
          method: "PUT",
          body: JSON.stringify({ text, was }),
        });
        const said = (await response.json()) as {
          mark?: string;
          differs?: KeptHere | null;
          problem?: { message: string };
          message?: string;
        };
        if (said.mark !== undefined) return { mark: said.mark };
        if (said.differs !== undefined) return { differs: said.differs };
        return { problem: said.problem?.message ?? said.message ?? lost };
      } catch {
        return { problem: lost };
      }
    },
  };
};
