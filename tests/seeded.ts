// Gives every property the same dice. A property that wants others says so itself.
import fc from "fast-check";

fc.configureGlobal({ seed: 20 });
