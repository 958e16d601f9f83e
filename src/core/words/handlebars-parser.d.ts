/**
 * The syntax tree of Handlebars, as far as templates of words are read. The package's own declarations lead nowhere
 * for modules, since they import a file without its ending.
 */
declare module '@handlebars/parser' {
  interface Placed {
    loc: { start: { line: number } };
  }
  export interface Program extends Placed {
    body: Statement[];
  }
  export interface Content extends Placed {
    type: 'ContentStatement';
    value: string;
  }
  export interface Comment extends Placed {
    type: 'CommentStatement';
  }
  export interface Mustache extends Placed {
    type: 'MustacheStatement';
    path: Expression;
    params: Expression[];
    hash?: object;
  }
  export interface Block extends Placed {
    type: 'BlockStatement';
    path: Path;
    params: Expression[];
    hash?: object;
    /** Absent in `{{^fact}}…{{/fact}}`. */
    program?: Program;
    inverse?: Program;
  }
  export interface Other extends Placed {
    type: 'PartialStatement' | 'PartialBlockStatement' | 'Decorator' | 'DecoratorBlock';
  }
  export type Statement = Content | Comment | Mustache | Block | Other;

  export interface Path extends Placed {
    type: 'PathExpression';
    /** Begins with @. */
    data: boolean;
    /** How many `../` lead it. */
    depth: number;
    /** Names between dots; none for `this`. */
    parts: (string | Call)[];
    original: string;
  }
  export interface Call extends Placed {
    type: 'SubExpression';
    path: Expression;
    params: Expression[];
    hash?: object;
  }
  export interface Literal extends Placed {
    type: 'StringLiteral' | 'NumberLiteral' | 'BooleanLiteral';
    value: string | number | boolean;
  }
  export interface Nothing extends Placed {
    type: 'UndefinedLiteral' | 'NullLiteral';
  }
  export type Expression = Path | Call | Literal | Nothing;

  export function parse(source: string): Program;
}
