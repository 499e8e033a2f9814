// The page: opens a line to the kernel's worker, lays a recipe on the table, and shows it.
import { render } from "preact";
import { DrawingSlip } from "./bring-in/drawing-slip.tsx";
import { RecipeCard } from "./card/recipe-card.tsx";
import { LaySlip } from "./cloth/lay-slip.tsx";
import { followCloth } from "./cloth/laying.ts";
import { connect, failure, take } from "./desk.ts";
import { DialsCard } from "./dials/dials-card.tsx";
import { ChoiceSlip } from "./files/choice-slip.tsx";
import { openFirst } from "./files/open-first.ts";
import { followTable } from "./hang/hanging.ts";
import { HangingSlip } from "./hang/hanging-slip.tsx";
import { takeDropped } from "./paper/dropped.ts";
import { PaperCard } from "./paper/paper-card.tsx";
import { ChosenSlip } from "./table/chosen-slip.tsx";
import { Table } from "./table/table.tsx";
import { TableTools } from "./table/table-tools.tsx";
import "./style.css";
import { kernelLine, type Speaker } from "./worker/kernel-line.ts";
import { openWorker } from "./worker/open-worker.ts";
import { WorkingStrip } from "./working/working-strip.tsx";

const Page = () => (
  <>
    <Table />
    <TableTools />
    <RecipeCard />
    <DialsCard />
    <ChosenSlip />
    <WorkingStrip />
    <HangingSlip />
    <LaySlip />
    <PaperCard />
    <DrawingSlip />
    <ChoiceSlip />
  </>
);

const line = kernelLine(() => openWorker() as unknown as Speaker, {
  worked: take,
  failed: (words) => {
    failure.value = words;
  },
});

void openFirst(line).then(() => {
  connect(line);
  followTable();
  followCloth();
  takeDropped();
  render(<Page />, document.querySelector("main")!);
});
