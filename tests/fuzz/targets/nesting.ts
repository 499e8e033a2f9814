// All sizes of a recipe: how they grow, and drawn on one another.

import { noRemarks } from "../../../kernel/drawing/remarks.ts";
import { cuttingRoomDxf } from "../../../kernel/exchange/cutting-room.ts";
import { svg } from "../../../kernel/export/svg.ts";
import { growthJson, growthReport } from "../../../kernel/report/growth-report.ts";
import { jsonText } from "../../../kernel/report/json.ts";
import { lettersOf } from "../../../kernel/report/said.ts";
import { growth } from "../../../kernel/sizes/growth.ts";
import { nested } from "../../../kernel/sizes/nested.ts";
import { garmentsOf } from "../../../kernel/sizes/size-tables.ts";
import { finite, plainlyTold } from "../figures-told.ts";
import { sources } from "../seed-recipes.ts";
import { holds, type Target } from "../target.ts";
import { chalkline, workedOnce } from "../worked-once.ts";
import { isTagged, isXml } from "./exporting.ts";

// More sizes than this are drafted one by one like these, and take a second.
const mostSizes = 8;

export const nesting: Target = {
  name: "sizes",
  isDear: true,
  run({ text }) {
    const { sizes } = workedOnce(text);
    if (sizes.size === 0 || sizes.size > mostSizes) return;
    const tables = growth(chalkline, { file: "fuzz.chalk", text }, { sources });
    holds(tables.flatMap((table) => table.sizes).length === sizes.size, "a size is lost or drafted twice");
    for (const { edges } of tables) finite(edges, "the growth");
    JSON.parse(jsonText(growthJson(tables)));
    plainlyTold(growthReport("fuzz.chalk", tables).map(lettersOf).join("\n"), text, "the growth");
    for (const table of tables) {
      const garments = garmentsOf(table);
      const sheet = svg(nested(garments, noRemarks).sheet);
      isXml(sheet);
      plainlyTold(sheet, text, "the nest");
      const dxf = cuttingRoomDxf(garments);
      isTagged(dxf);
      plainlyTold(dxf, text, "the nest as DXF");
    }
  },
};
