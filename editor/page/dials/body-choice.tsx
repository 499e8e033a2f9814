// Whose body the recipe is drafted for: measures typed by hand, or a file with one body a row.
import { useSignal } from "@preact/signals";
import { ask, given, worked } from "../desk.ts";
import type { Body } from "../worker/answers.ts";

export const BodyChoice = () => {
  const measures = worked.value?.measures ?? [];
  const bodies = useSignal<readonly Body[]>([]);
  const person = useSignal("");
  const problem = useSignal("");
  if (measures.length === 0) return null;

  const wear = (body: Body | undefined): void => {
    person.value = body?.name ?? "";
    const { size } = given.peek();
    given.value = { measures: body?.measures ?? [], ...(size !== undefined && { size }) };
  };
  const set = async (name: string, written: string): Promise<void> => {
    const amount = await ask("amount", { written });
    problem.value = amount ? "" : `${written} is not a length such as 92 cm.`;
    if (!amount) return;
    given.value = {
      ...given.peek(),
      measures: [...given.peek().measures.filter(([each]) => each !== name), [name, amount]],
    };
  };
  const read = async (chosen: File | undefined): Promise<void> => {
    if (!chosen) return;
    const found = await ask("bodies", { text: await chosen.text(), called: chosen.name });
    bodies.value = found?.bodies ?? [];
    problem.value = found?.problems.join(" ") ?? "";
    wear(found?.bodies[0]);
  };
  const isGiven = (name: string): boolean => given.value.measures.some(([each]) => each === name);

  return (
    <details>
      <summary>Body ({measures.length} measures)</summary>
      <label class="menu-row">
        A file of bodies (CSV or JSON)
        <input
          type="file"
          accept=".csv,.json,.txt"
          onChange={({ currentTarget }) => void read(currentTarget.files?.[0])}
        />
      </label>
      {bodies.value.length > 0 && (
        <label class="menu-row">
          Person
          <select
            value={person.value}
            onChange={({ currentTarget }) => wear(bodies.value.find(({ name }) => name === currentTarget.value))}
          >
            <option value="">the recipe's own</option>
            {bodies.value.map(({ name }) => (
              <option key={name} value={name}>
                {name}
              </option>
            ))}
          </select>
        </label>
      )}
      {problem.value !== "" && <p class="failure">{problem.value}</p>}
      {measures.map(({ name, words }) => (
        <label key={name} class={`measure${isGiven(name) ? " given" : ""}`}>
          <span>{name}</span>
          <input value={words} onChange={({ currentTarget }) => void set(name, currentTarget.value)} />
        </label>
      ))}
      {given.value.measures.length > 0 && (
        <button type="button" onClick={() => wear(undefined)}>
          Back to the recipe's own measures
        </button>
      )}
    </details>
  );
};
