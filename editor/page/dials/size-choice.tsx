// Which size of the recipe's own table it is worked in.
import { given, worked } from "../desk.ts";

export const SizeChoice = () => {
  const sizes = worked.value?.sizes ?? [];
  if (sizes.length === 0) return null;
  return (
    <label class="size-choice">
      Size
      <select
        value={given.value.size ?? ""}
        onChange={({ currentTarget: { value } }) => {
          const { measures } = given.peek();
          given.value = value === "" ? { measures } : { measures, size: value };
        }}
      >
        <option value="">as drafted</option>
        {sizes.map((size) => (
          <option key={size} value={size}>
            {size}
          </option>
        ))}
      </select>
    </label>
  );
};
