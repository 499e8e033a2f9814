// A recipe as a tree: lines with a verb, names, operands and clauses; values as expressions. Every node owns its stretch of text.

/** Offsets into the recipe's text; `to` is just behind the last character. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

export interface Word extends Stretch {
  readonly text: string;
}

export type Expression =
  | NumberValue
  | TextValue
  | NameValue
  | CallValue
  | MemberValue
  | UnaryValue
  | BinaryValue
  | PlaceValue
  | AlongPlace
  | OffsetPlace
  | TowardPlace
  | BearingPlace
  | JoinLine
  | DirectionValue;

/** A number as written, with its unit; `value` is the plain number (12.5, 0.5 for 50%). */
export interface NumberValue extends Stretch {
  readonly kind: "number";
  readonly value: number;
  readonly written: string;
  readonly unit?: Word;
}

export interface TextValue extends Stretch {
  readonly kind: "text";
  readonly value: string;
}

/** `hem`, `back.hem`, `straight.back.hem`, `shoulder.start`. */
export interface NameValue extends Stretch {
  readonly kind: "name";
  readonly path: readonly Word[];
}

export interface CallValue extends Stretch {
  readonly kind: "call";
  readonly name: Word;
  readonly values: readonly Expression[];
}

/** `turned(hem).start`, `(A--B).end`: a part of a value that is no plain name. */
export interface MemberValue extends Stretch {
  readonly kind: "member";
  readonly of: Expression;
  readonly member: Word;
}

export interface UnaryValue extends Stretch {
  readonly kind: "unary";
  readonly operator: "-" | "not";
  readonly value: Expression;
}

export type BinaryOperator = "+" | "-" | "*" | "/" | "=" | "<" | ">" | "<=" | ">=" | "<>" | "and" | "or";

export interface BinaryValue extends Stretch {
  readonly kind: "binary";
  readonly operator: BinaryOperator;
  readonly left: Expression;
  readonly right: Expression;
  readonly sign: Stretch;
}

/** `(3 cm, 4 cm)` */
export interface PlaceValue extends Stretch {
  readonly kind: "place";
  readonly x: Expression;
  readonly y: Expression;
}

/** `shoulder at 50%`, `armscye at end - 8 cm`. */
export interface AlongPlace extends Stretch {
  readonly kind: "at";
  readonly edge: Expression;
  /** Counted back from the end. */
  readonly fromEnd: boolean;
  /** Undefined for plain `at end`. */
  readonly amount?: Expression;
}

/** `A right 12 cm` */
export interface OffsetPlace extends Stretch {
  readonly kind: "offset";
  readonly origin: Expression;
  readonly side: "left" | "right" | "up" | "down";
  readonly amount: Expression;
}

/** `A toward B 20 cm` */
export interface TowardPlace extends Stretch {
  readonly kind: "toward";
  readonly origin: Expression;
  readonly aim: Expression;
  readonly amount: Expression;
}

/** `A bearing 20 deg for 12 cm` */
export interface BearingPlace extends Stretch {
  readonly kind: "bearing";
  readonly origin: Expression;
  readonly angle: Expression;
  readonly amount: Expression;
}

/** `A--B` */
export interface JoinLine extends Stretch {
  readonly kind: "join";
  readonly start: Expression;
  readonly end: Expression;
}

/** `down`, `toward A`, `along shoulder`, `square-to shoulder`. */
export interface DirectionValue extends Stretch {
  readonly kind: "direction";
  readonly word: "left" | "right" | "up" | "down" | "toward" | "along" | "square-to";
  readonly aim?: Expression;
}

/** One value of a list, with what its suffix word adds. */
export interface Operand extends Stretch {
  readonly value: Expression;
  readonly suffix?: { readonly word: Word; readonly value: Expression };
}

export interface FilledClause extends Stretch {
  readonly word: Word;
  readonly operands: readonly Operand[];
}

/** A parameter of a step of the recipe's own. */
export interface Parameter extends Stretch {
  readonly type: Word;
  readonly name: Word;
  readonly standard?: Expression;
}

/** An entry of a `use`, `size` or `recipe` block. */
export interface Entry extends Stretch {
  readonly name: Word;
  readonly value: Expression;
}

/** One statement. */
export interface Line extends Stretch {
  readonly verb: Word;
  readonly names: readonly Word[];
  readonly operands: readonly Operand[];
  readonly clauses: readonly FilledClause[];
  readonly text?: TextValue;
  /** The count behind the operand: the 2 of `cut front 2 from shell`. */
  readonly count?: NumberValue;
  readonly parameters?: readonly Parameter[];
  readonly block?: Block;
  /** The `else` branch of an `if`: a line whose verb is `else`. */
  readonly otherwise?: Line;
  /** The line could not be read: only its verb, names and block are to be trusted. */
  readonly broken: boolean;
}

export interface Block extends Stretch {
  readonly lines: readonly Line[];
  readonly entries: readonly Entry[];
}

/** A comment with the line it stands on alone, or behind a statement. */
export interface Comment extends Stretch {
  readonly text: string;
}

export interface RecipeTree {
  readonly file: string;
  readonly text: string;
  readonly lines: readonly Line[];
  readonly comments: readonly Comment[];
}
