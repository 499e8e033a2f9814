// The chevrotain parser: one statement at a time, already tagged, into a tree. It knows the shape of a sentence and
// how values are written; which words are verbs and clauses was settled by tagging, so no rule names one.
import { EmbeddedActionsParser } from "chevrotain";
import {
  And,
  At,
  AtLeast,
  AtMost,
  allTokens,
  Bearing,
  ChoiceWord,
  ClauseWord,
  ClosingText,
  Comma,
  Count,
  DirectionWord,
  Dot,
  End,
  Equal,
  For,
  LeftRound,
  Less,
  LineSign,
  Minus,
  More,
  NameToken,
  NamingEquals,
  NewName,
  Not,
  NotEqual,
  NumberToken,
  Or,
  Over,
  Plus,
  RightRound,
  SideWord,
  SuffixWord,
  TextToken,
  Times,
  type Token,
  Toward,
  Unit,
  Verb,
} from "./tokens.ts";
import type {
  BinaryOperator,
  Entry,
  Expression,
  FilledClause,
  Line,
  NumberValue,
  Operand,
  Parameter,
  TextValue,
  Word,
} from "./tree.ts";

const wordOf = (token: Token): Word => ({
  text: token.image,
  from: token.startOffset,
  to: token.startOffset + token.image.length,
});

const memberOf = (of: Expression, member: Word): Expression => ({
  kind: "member",
  of,
  member,
  from: of.from,
  to: member.to,
});

const binary = (operator: string, left: Expression, right: Expression, sign: Token): Expression => ({
  kind: "binary",
  operator: operator as BinaryOperator,
  left,
  right,
  sign: wordOf(sign),
  from: left.from,
  to: right.to,
});

/** What was read, or the first word that does not fit; none where the words end too soon. */
export type Read<Thing> = { readonly read: Thing } | { readonly misfit: Token | undefined };

/** Reads the tagged words of one statement: VERB [NAME, … =] [OPERANDS] { CLAUSE-WORD [OPERANDS] } [TEXT]. */
export const readStatement = (words: readonly Token[]): Read<Omit<Line, "broken">> =>
  whole(words, (parser) => parser.statement());

/** Reads NAME = VALUE, as it stands in a `use` or `size` block. The equals sign may be left out before a text. */
export const readEntry = (words: readonly Token[]): Read<Entry> => whole(words, (parser) => parser.entry());

/** Reads the parameters of a step of the recipe's own: (edge shoulder, length amount = 5 cm). */
export const readParameters = (words: readonly Token[]): Read<Parameter[]> =>
  whole(words, (parser) => parser.parameters());

/** Has chevrotain look for mistakes in the rules themselves; throws where there are any. */
export const checkRules = (): void => {
  new LineParser(false);
};

/** The plain number that a number token stands for: 12.5, 5/8, "1 1/2", 50%. */
export const numberWritten = (text: string): number => {
  if (text.endsWith("%")) return Number(text.slice(0, -1)) / 100;
  const mixed = /^(?:(\d+) +)?(\d+)\/(\d+)$/.exec(text);
  if (!mixed) return Number(text);
  return Number(mixed[1] ?? 0) + Number(mixed[2]) / Number(mixed[3]);
};

/** What stands between the quotes, escapes resolved. */
export const textWritten = (image: string): string =>
  image.slice(1, -1).replace(/\\(.)/gs, (_, letter: string) => (letter === "n" ? "\n" : letter));

const textValue = (token: Token): TextValue => ({
  kind: "text",
  value: textWritten(token.image),
  from: token.startOffset,
  to: token.startOffset + token.image.length,
});

class LineParser extends EmbeddedActionsParser {
  constructor(skipValidations: boolean) {
    super(allTokens, { recoveryEnabled: false, maxLookahead: 2, skipValidations });
    this.performSelfAnalysis();
  }

  /** VERB [NAME, … =] [OPERANDS] { CLAUSE-WORD [OPERANDS] } [TEXT] */
  statement = this.RULE("statement", (): Omit<Line, "broken"> => {
    const verb = this.CONSUME(Verb);
    const names: Word[] = [];
    const clauses: FilledClause[] = [];
    let operands: Operand[] = [];
    let text: TextValue | undefined;
    let count: NumberValue | undefined;
    this.OPTION(() => {
      this.AT_LEAST_ONE_SEP({ SEP: Comma, DEF: () => names.push(wordOf(this.CONSUME(NewName))) });
      this.OPTION1(() => this.CONSUME(NamingEquals));
    });
    this.OPTION2(() => {
      operands = this.SUBRULE(this.operands);
    });
    this.OPTION4(() => {
      const token = this.CONSUME(Count);
      const { from, to, text: written } = wordOf(token);
      count = { kind: "number", value: numberWritten(written), written, from, to };
    });
    this.MANY(() => clauses.push(this.SUBRULE(this.clause)));
    this.OPTION3(() => {
      text = textValue(this.CONSUME(ClosingText));
    });
    const last = this.LA(0);
    return {
      verb: wordOf(verb),
      names,
      operands,
      clauses,
      ...(text && { text }),
      ...(count && { count }),
      from: verb.startOffset,
      to: last.startOffset + last.image.length,
    };
  });

  /** NAME = VALUE, as it stands in a `use` or `size` block. The equals sign may be left out before a text. */
  entry = this.RULE("entry", (): Entry => {
    const name = wordOf(this.CONSUME(NewName));
    this.OPTION(() => this.CONSUME(NamingEquals));
    const value = this.SUBRULE(this.expression);
    return { name, value, from: name.from, to: value?.to ?? 0 };
  });

  /** The parameters of a step of the recipe's own: (edge shoulder, length amount = 5 cm). */
  parameters = this.RULE("parameters", (): Parameter[] => {
    const list: Parameter[] = [];
    this.CONSUME(LeftRound);
    this.MANY_SEP({
      SEP: Comma,
      DEF: () => {
        const type = wordOf(this.CONSUME(ChoiceWord));
        const name = wordOf(this.CONSUME(NewName));
        let standard: Expression | undefined;
        this.OPTION(() => {
          this.CONSUME(NamingEquals);
          standard = this.SUBRULE(this.expression);
        });
        list.push({ type, name, ...(standard && { standard }), from: type.from, to: standard?.to ?? name.to });
      },
    });
    this.CONSUME(RightRound);
    return list;
  });

  private operands = this.RULE("operands", (): Operand[] => {
    const list: Operand[] = [];
    this.AT_LEAST_ONE_SEP({ SEP: Comma, DEF: () => list.push(this.SUBRULE(this.operand)) });
    return list;
  });

  private operand = this.RULE("operand", (): Operand => {
    const value = this.OR([
      { ALT: () => this.bareWord(this.CONSUME(ChoiceWord)) },
      { ALT: () => this.bareWord(this.CONSUME(NewName)) },
      { ALT: () => this.SUBRULE(this.expression) },
    ]);
    let suffix: Operand["suffix"];
    this.OPTION(() => {
      const word = wordOf(this.CONSUME(SuffixWord));
      suffix = { word, value: this.SUBRULE1(this.expression) };
    });
    return { value, ...(suffix && { suffix }), from: value?.from ?? 0, to: suffix?.value?.to ?? value?.to ?? 0 };
  });

  private clause = this.RULE("clause", (): FilledClause => {
    const token = this.CONSUME(ClauseWord);
    const word = wordOf(token);
    let operands: Operand[] = [];
    this.OPTION(() => {
      operands = this.SUBRULE(this.operands);
    });
    return this.ACTION(() => ({ word, operands, from: word.from, to: operands.at(-1)?.to ?? word.to }));
  });

  private bareWord(token: Token): Expression {
    const word = wordOf(token);
    return { kind: "name", path: [word], from: word.from, to: word.to };
  }

  expression = this.RULE("expression", (): Expression => {
    let left = this.SUBRULE(this.both);
    this.MANY(() => {
      const sign = this.CONSUME(Or);
      const right = this.SUBRULE1(this.both);
      left = this.ACTION(() => binary("or", left, right, sign));
    });
    return left;
  });

  private both = this.RULE("both", (): Expression => {
    let left = this.SUBRULE(this.negated);
    this.MANY(() => {
      const sign = this.CONSUME(And);
      const right = this.SUBRULE1(this.negated);
      left = this.ACTION(() => binary("and", left, right, sign));
    });
    return left;
  });

  private negated: () => Expression = this.RULE(
    "negated",
    (): Expression =>
      this.OR([
        {
          ALT: () => {
            const sign = this.CONSUME(Not);
            const value = this.SUBRULE(this.negated);
            return this.ACTION(
              (): Expression => ({ kind: "unary", operator: "not", value, from: sign.startOffset, to: value.to }),
            );
          },
        },
        { ALT: () => this.SUBRULE(this.comparison) },
      ]),
  );

  private comparison = this.RULE("comparison", (): Expression => {
    let left = this.SUBRULE(this.walkedPlace);
    this.OPTION(() => {
      const sign = this.OR([
        { ALT: () => this.CONSUME(Equal) },
        { ALT: () => this.CONSUME(NotEqual) },
        { ALT: () => this.CONSUME(AtMost) },
        { ALT: () => this.CONSUME(AtLeast) },
        { ALT: () => this.CONSUME(Less) },
        { ALT: () => this.CONSUME(More) },
      ]);
      const right = this.SUBRULE1(this.walkedPlace);
      left = this.ACTION(() => binary(sign.image, left, right, sign));
    });
    return left;
  });

  /** A place reads left to right, as one would walk it. */
  private walkedPlace = this.RULE("walkedPlace", (): Expression => {
    let place = this.SUBRULE(this.sum);
    this.MANY(() => {
      place = this.OR([
        {
          ALT: () => {
            const side = this.CONSUME(SideWord);
            const amount = this.SUBRULE1(this.sum);
            return this.ACTION(
              (): Expression => ({
                kind: "offset",
                origin: place,
                side: side.image as "left",
                amount,
                from: place.from,
                to: amount.to,
              }),
            );
          },
        },
        {
          ALT: () => {
            this.CONSUME(Toward);
            const aim = this.SUBRULE(this.joined);
            const amount = this.SUBRULE2(this.sum);
            return this.ACTION(
              (): Expression => ({
                kind: "toward",
                origin: place,
                aim,
                amount,
                from: place.from,
                to: amount.to,
              }),
            );
          },
        },
        {
          ALT: () => {
            this.CONSUME(Bearing);
            const angle = this.SUBRULE3(this.sum);
            this.CONSUME(For);
            const amount = this.SUBRULE4(this.sum);
            return this.ACTION(
              (): Expression => ({
                kind: "bearing",
                origin: place,
                angle,
                amount,
                from: place.from,
                to: amount.to,
              }),
            );
          },
        },
        {
          ALT: () => {
            this.CONSUME(At);
            let amount: Expression | undefined;
            let end: Token | undefined;
            this.OR1([
              {
                ALT: () => {
                  end = this.CONSUME(End);
                  this.OPTION(() => {
                    this.CONSUME(Minus);
                    amount = this.SUBRULE5(this.sum);
                  });
                },
              },
              {
                ALT: () => {
                  amount = this.SUBRULE6(this.sum);
                },
              },
            ]);
            return this.ACTION(
              (): Expression => ({
                kind: "at",
                edge: place,
                fromEnd: end !== undefined,
                ...(amount && { amount }),
                from: place.from,
                to: amount?.to ?? end!.startOffset + 3,
              }),
            );
          },
        },
      ]);
    });
    return place;
  });

  private sum = this.RULE("sum", (): Expression => {
    let left = this.SUBRULE(this.product);
    this.MANY(() => {
      const sign = this.OR([{ ALT: () => this.CONSUME(Plus) }, { ALT: () => this.CONSUME(Minus) }]);
      const right = this.SUBRULE1(this.product);
      left = this.ACTION(() => binary(sign.image, left, right, sign));
    });
    return left;
  });

  private product = this.RULE("product", (): Expression => {
    let left = this.SUBRULE(this.signed);
    this.MANY(() => {
      const sign = this.OR([{ ALT: () => this.CONSUME(Times) }, { ALT: () => this.CONSUME(Over) }]);
      const right = this.SUBRULE1(this.signed);
      left = this.ACTION(() => binary(sign.image, left, right, sign));
    });
    return left;
  });

  private signed: () => Expression = this.RULE(
    "signed",
    (): Expression =>
      this.OR([
        {
          ALT: () => {
            const sign = this.CONSUME(Minus);
            const value = this.SUBRULE(this.signed);
            return this.ACTION(
              (): Expression => ({ kind: "unary", operator: "-", value, from: sign.startOffset, to: value.to }),
            );
          },
        },
        { ALT: () => this.SUBRULE(this.joined) },
      ]),
  );

  /** `A--B`: the straight line between two places. */
  private joined = this.RULE("joined", (): Expression => {
    let start = this.SUBRULE(this.single);
    this.OPTION(() => {
      this.CONSUME(LineSign);
      const end = this.SUBRULE1(this.single);
      start = this.ACTION((): Expression => ({ kind: "join", start, end, from: start.from, to: end.to }));
    });
    return start;
  });

  private single: () => Expression = this.RULE(
    "single",
    (): Expression =>
      this.OR([
        { ALT: () => this.SUBRULE(this.numberWithUnit) },
        { ALT: () => textValue(this.CONSUME(TextToken)) },
        { ALT: () => this.SUBRULE(this.named) },
        { ALT: () => this.SUBRULE(this.rounded) },
        { ALT: () => this.SUBRULE(this.direction) },
      ]),
  );

  private numberWithUnit = this.RULE("numberWithUnit", (): Expression => {
    const token = this.CONSUME(NumberToken);
    let unit: Word | undefined;
    this.OPTION(() => {
      unit = wordOf(this.CONSUME(Unit));
    });
    return {
      kind: "number",
      value: numberWritten(token.image),
      written: token.image,
      ...(unit && { unit }),
      from: token.startOffset,
      to: unit?.to ?? token.startOffset + token.image.length,
    };
  });

  private named = this.RULE("named", (): Expression => {
    const first = wordOf(this.CONSUME(NameToken));
    let expression: Expression = { kind: "name", path: [first], from: first.from, to: first.to };
    this.OPTION(() =>
      this.OR([
        {
          ALT: () => {
            this.CONSUME(LeftRound);
            const values: Expression[] = [];
            this.MANY_SEP({ SEP: Comma, DEF: () => values.push(this.SUBRULE(this.expression)) });
            const close = this.CONSUME(RightRound);
            expression = { kind: "call", name: first, values, from: first.from, to: close.startOffset + 1 };
            this.MANY(() => {
              this.CONSUME1(Dot);
              const member = this.SUBRULE(this.member);
              expression = this.ACTION(() => memberOf(expression, member));
            });
          },
        },
        {
          ALT: () => {
            const path = [first];
            this.AT_LEAST_ONE(() => {
              this.CONSUME(Dot);
              const member = this.SUBRULE1(this.member);
              this.ACTION(() => path.push(member));
            });
            expression = { kind: "name", path, from: first.from, to: path.at(-1)!.to };
          },
        },
      ]),
    );
    return expression;
  });

  /** A value in brackets, or a place: `(3 cm, 4 cm)`. */
  private rounded = this.RULE("rounded", (): Expression => {
    const open = this.CONSUME(LeftRound);
    const x = this.SUBRULE(this.expression);
    let y: Expression | undefined;
    this.OPTION(() => {
      this.CONSUME(Comma);
      y = this.SUBRULE1(this.expression);
    });
    const close = this.CONSUME(RightRound);
    let value = this.ACTION((): Expression => {
      const stretch = { from: open.startOffset, to: close.startOffset + 1 };
      return y ? { kind: "place", x, y, ...stretch } : { ...x, ...stretch };
    });
    this.MANY(() => {
      this.CONSUME(Dot);
      const member = this.SUBRULE(this.member);
      value = this.ACTION(() => memberOf(value, member));
    });
    return value;
  });

  /** The word behind a dot; `end` is no place word there. */
  private member = this.RULE("member", (): Word => {
    const token = this.OR([{ ALT: () => this.CONSUME(NameToken) }, { ALT: () => this.CONSUME(End) }]);
    return this.ACTION(() => wordOf(token));
  });

  private direction = this.RULE(
    "direction",
    (): Expression =>
      this.OR([
        {
          ALT: () => {
            const { from, to, text } = wordOf(this.CONSUME(SideWord));
            return { kind: "direction", word: text as "left", from, to } as Expression;
          },
        },
        {
          ALT: () => {
            const token = this.OR1([{ ALT: () => this.CONSUME(DirectionWord) }, { ALT: () => this.CONSUME(Toward) }]);
            const aim = this.SUBRULE(this.walkedPlace);
            return this.ACTION(
              (): Expression => ({
                kind: "direction",
                word: token.image as "along",
                aim,
                from: token.startOffset,
                to: aim.to,
              }),
            );
          },
        },
      ]),
  );
}

// Unchecked at every start: a test checks the rules.
const lineParser = new LineParser(true);

const whole = <Thing>(words: readonly Token[], rule: (parser: LineParser) => Thing): Read<Thing> => {
  lineParser.input = [...words];
  const read = rule(lineParser);
  const [error] = lineParser.errors;
  if (!error) return { read };
  return { misfit: error.token.image === "" ? undefined : error.token };
};
