// What a used recipe brings in, as a value that members can be asked of.
import type { Evaluated } from "../../kernel/evaluate.ts";
import type { BundleValue, Value } from "../../kernel/value.ts";

/** A used recipe under the name it goes by. */
export const bundleOf = (called: string, used: Evaluated): BundleValue => {
  const { garment, values, uses } = used;
  const find = (name: string): Value | undefined => {
    const piece = garment.pieces.get(name);
    if (piece) return { kind: "piece", piece, called: `${called}.${name}`, withheld: new Set() };
    const fabric = garment.fabrics.get(name);
    const inner = uses.get(name);
    return (
      values.get(name)?.value ??
      (fabric && { kind: "fabric", fabric }) ??
      (inner && bundleOf(`${called}.${name}`, inner))
    );
  };
  return {
    kind: "recipe",
    called,
    find,
    names: [...garment.pieces.keys(), ...values.keys(), ...garment.fabrics.keys(), ...uses.keys()],
  };
};
