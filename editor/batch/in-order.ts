// Many pieces of work at once, their outcomes one after another in the order in which the work was handed out.

/**
 * Hands out work, never more than `most` pieces at a time, and yields each with its outcome. Nothing more is handed out once the
 * caller stops asking; what is under way then is left to its end.
 */
export async function* inOrder<Work, Outcome>(
  work: Iterable<Work>,
  most: number,
  done: (work: Work) => Promise<Outcome>,
): AsyncGenerator<readonly [Work, Outcome]> {
  const underWay: { readonly work: Work; readonly outcome: Promise<Outcome> }[] = [];
  const left = work[Symbol.iterator]();
  while (true) {
    while (underWay.length < most) {
      const next = left.next();
      if (next.done) break;
      const outcome = done(next.value);
      // Its turn may come long after it failed; until then nobody else is to take it for forgotten.
      outcome.catch(() => {});
      underWay.push({ work: next.value, outcome });
    }
    const first = underWay.shift();
    if (!first) return;
    yield [first.work, await first.outcome];
  }
}
