import {
  type Block,
  type Call,
  type Expression,
  type Mustache,
  type Path,
  type Program,
  parse,
  type Statement,
} from '@handlebars/parser';
import { DossierError } from '../model/error.js';

/** What a helper knows beside its arguments. */
export interface HelperScope {
  exhibits: readonly number[];
}
export type Helper = (values: readonly unknown[], scope: HelperScope) => unknown;
export type Helpers = ReadonlyMap<string, Helper>;

/** The facts that a template may print, or one item of a list among them. */
interface Scope extends HelperScope {
  here: unknown;
  outer?: Scope;
}
type Print = (scope: Scope) => string;
type Value = (scope: Scope) => unknown;

/** What is wrong with a template, and in which row, counted from 1. */
export class TemplateFault extends Error {
  override name = 'TemplateFault';
  constructor(
    message: string,
    readonly row: number | undefined,
  ) {
    super(message);
  }
}

export type Template = (facts: Readonly<Record<string, unknown>>, scope: HelperScope) => string;

/**
 * Reads the part of Handlebars that the words use: facts, helpers, `#if`, `#unless`, `#each` and `else`. The syntax tree
 * is walked instead of made into code, which a page's content security policy refuses to run. Throws TemplateFault.
 */
export function readTemplate(source: string, helpers: Helpers): Template {
  const print = program(parsed(source), helpers);
  return (facts, { exhibits }) => print({ here: facts, exhibits });
}

function parsed(source: string): Program {
  try {
    return parse(source);
  } catch (cause) {
    const said = messageOf(cause);
    const [, line, place] = /Parse error on line (\d+)|- (\d+):\d+$/.exec(said) ?? [];
    const row = Number(line ?? place);
    throw new TemplateFault(said.replace(/\s*\n\s*/g, ' '), row > 0 ? row : undefined);
  }
}

const messageOf = (cause: unknown): string => (cause instanceof Error ? cause.message : String(cause));
const faultAt = ({ loc }: Statement | Expression, message: string) =>
  new TemplateFault(message, loc.start.line);

function program({ body }: Program, helpers: Helpers): Print {
  const parts = body.map((node) => statement(node, helpers));
  return (scope) => parts.map((print) => print(scope)).join('');
}

function statement(node: Statement, helpers: Helpers): Print {
  switch (node.type) {
    case 'ContentStatement':
      return () => node.value;
    case 'CommentStatement':
      return () => '';
    case 'MustacheStatement': {
      const value = call(node, helpers);
      return (scope) => String(value(scope) ?? '');
    }
    case 'BlockStatement':
      return block(node, helpers);
    case 'PartialStatement':
    case 'PartialBlockStatement':
    case 'Decorator':
    case 'DecoratorBlock':
      throw faultAt(node, 'a template cannot take in another one');
  }
}

function block(node: Block, helpers: Helpers): Print {
  const name = node.path.original;
  const [first, ...more] = node.params;
  if (!['if', 'unless', 'each'].includes(name))
    throw faultAt(node, `there is no block "#${name}", only #if, #unless and #each`);
  if (first === undefined || more.length > 0 || node.hash !== undefined)
    throw faultAt(node, `#${name} is followed by one fact`);
  const value = expression(first, helpers);
  const inner = node.program === undefined ? () => '' : program(node.program, helpers);
  const other = node.inverse === undefined ? () => '' : program(node.inverse, helpers);
  if (name === 'if') return (scope) => (holds(value(scope)) ? inner : other)(scope);
  if (name === 'unless') return (scope) => (holds(value(scope)) ? other : inner)(scope);
  return (scope) => {
    const items = value(scope);
    if (!holds(items)) return other(scope);
    if (!Array.isArray(items)) throw faultAt(node, '#each is followed by a list');
    return items.map((here: unknown) => inner({ here, exhibits: scope.exhibits, outer: scope })).join('');
  };
}

/** An empty list holds as little as an absent fact. */
const holds = (value: unknown): boolean => (Array.isArray(value) ? value.length > 0 : Boolean(value));

/** A helper with its arguments, or a fact by its name alone. */
function call(node: Mustache | Call, helpers: Helpers): Value {
  const { path, params } = node;
  if (node.hash !== undefined) throw faultAt(node, 'helpers take no arguments with names');
  if (path.type !== 'PathExpression') throw faultAt(node, 'a fact or a helper comes first');
  const helper = helpers.get(path.original);
  if (helper === undefined && params.length === 0) return fact(path);
  if (helper === undefined) throw faultAt(node, `there is no helper "${path.original}"`);
  const values = params.map((param) => expression(param, helpers));
  return (scope) => {
    try {
      return helper(
        values.map((value) => value(scope)),
        scope,
      );
    } catch (cause) {
      if (cause instanceof TemplateFault || cause instanceof DossierError) throw cause;
      throw faultAt(node, messageOf(cause));
    }
  };
}

function expression(node: Expression, helpers: Helpers): Value {
  switch (node.type) {
    case 'SubExpression':
      return call(node, helpers);
    case 'PathExpression':
      return fact(node);
    case 'StringLiteral':
    case 'NumberLiteral':
    case 'BooleanLiteral':
      return () => node.value;
    case 'UndefinedLiteral':
    case 'NullLiteral':
      throw faultAt(node, 'a fact, or words in quotation marks, stand here');
  }
}

/** `name`, `this` for an item of a list, `../name` for a fact outside of the list. */
function fact(path: Path): Value {
  const [name, ...more] = path.parts;
  if (path.data || more.length > 0 || (name !== undefined && typeof name !== 'string'))
    throw faultAt(path, `there is no fact "${path.original}": facts have no parts`);
  return (scope) => {
    let at: Scope | undefined = scope;
    for (let up = path.depth; up > 0; up -= 1) at = at?.outer;
    const here = at?.here;
    if (name === undefined) return here;
    if (typeof here !== 'object' || here === null || !Object.hasOwn(here, name))
      throw faultAt(path, `there is no fact "${name}" here`);
    return Reflect.get(here, name);
  };
}
