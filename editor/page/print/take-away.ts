// Has drawings written as files and hands them over: one file as it is, several in an archive.
import { strToU8, zipSync } from "fflate";
import { numberOf } from "../../../kernel/lettering/readable.ts";
import { failure, file } from "../desk.ts";
import { handOver } from "../files/hand-over.ts";
import { errand } from "../worker/errand.ts";
import type { Printed, ToPrint } from "./spoken.ts";

// A pattern of hundreds of pages takes some seconds; this is for the case that it never ends, ms.
const longest = 120_000;

/** Writes what is asked for and hands it over, several files as `archive`; says in words where that cannot be. */
export const takeAway = async (asked: ToPrint, archive: string): Promise<void> => {
  failure.value = "";
  try {
    const printed = await errand<ToPrint, Printed>("printer", asked, longest);
    if ("refused" in printed) {
      failure.value = printed.refused;
      return;
    }
    failure.value = printed.lacking
      .map((each) => `The font has no ${each}: it is written as ${numberOf(each)}.`)
      .join(" ");
    const [first, ...others] = printed.files;
    if (!first) return;
    if (others.length === 0) {
      handOver(named(first.name), first.type, first.content);
      return;
    }
    const contents = printed.files.map(
      ({ name, content }) => [name, typeof content === "string" ? strToU8(content) : content] as const,
    );
    // The same drawings give the same bytes: an archive's dates are all the same.
    handOver(
      named(archive),
      "application/zip",
      zipSync(Object.fromEntries(contents), { mtime: "1980-01-01T00:00:00" }),
    );
  } catch (error) {
    failure.value = `Nothing was downloaded. ${error instanceof Error ? error.message : String(error)}`;
  }
};

/** What belongs to a recipe is called by its name first. */
const named = (name: string): string => {
  const path = file.peek();
  return `${path.slice(path.lastIndexOf("/") + 1).replace(/\.chalk$/, "")}-${name}`;
};
