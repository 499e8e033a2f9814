// Work that is done at once and comes out in order.
import { expect, test } from "vitest";
import { inOrder } from "../../editor/batch/in-order.ts";
import { isRowFolder, rowFolder } from "../../editor/batch/row-folder.ts";

test("outcomes come in the order of the work, however long each takes, and no more is under way than may be", async () => {
  const waits = [30, 1, 20, 1, 1, 10, 1];
  let [underWay, most] = [0, 0];
  const outcomes: (readonly [number, string])[] = [];
  const done = async (wait: number): Promise<string> => {
    underWay += 1;
    most = Math.max(most, underWay);
    await new Promise((resolve) => setTimeout(resolve, wait));
    underWay -= 1;
    return `after ${wait}`;
  };
  for await (const outcome of inOrder(waits, 3, done)) outcomes.push(outcome);
  expect(outcomes).toEqual(waits.map((wait) => [wait, `after ${wait}`]));
  expect(most).toBe(3);
});

test("work that fails is told in its turn, and nothing more is handed out", async () => {
  const begun: number[] = [];
  const done = async (work: number): Promise<number> => {
    begun.push(work);
    if (work === 2) throw new Error("no");
    return work;
  };
  const outcomes: number[] = [];
  const all = async (): Promise<void> => {
    for await (const [, outcome] of inOrder([1, 2, 3, 4, 5], 2, done)) outcomes.push(outcome);
  };
  await expect(all()).rejects.toThrow("no");
  expect([outcomes, begun]).toEqual([[1], [1, 2, 3]]);
});

test.each([
  [12, "Usher 3", "000012-Usher-3"],
  [1234567, "Zoë Ångström", "1234567-Zoë-Ångström"],
  [2, "../../etc/passwd", "000002-etc-passwd"],
  [3, "..", "000003"],
  [4, "CON", "000004-CON"],
  [5, "a\u0000b\nc", "000005-a-b-c"],
  [6, "x".repeat(300), `000006-${"x".repeat(40)}`],
])("row %i, %j goes to the folder %s", (row, name, folder) => {
  expect(rowFolder(row, name)).toBe(folder);
  expect(isRowFolder(folder)).toBe(true);
});

test("a folder of somebody's own is no row's", () => {
  for (const name of ["12-Ida", "photos", "000012 Ida", "000012-Ida/..", ""]) expect(isRowFolder(name)).toBe(false);
});
