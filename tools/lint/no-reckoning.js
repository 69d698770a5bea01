/**
 * Commands phrase, the core reckons: in a command's file no numbers are multiplied, divided, rounded or summed. One more
 * or one less, the next row or the last place of a list, is counting and allowed; so are an amount without its sign and
 * the order of numbers.
 */
import ts from 'typescript';

const ARITHMETIC = new Set(['+', '-', '*', '/', '%', '**']);
const ASSIGNED = new Set(['+=', '-=', '*=', '/=', '%=', '**=']);

/** `.sort((a, b) => a - b)` */
const isOrder = (node) =>
  node.type === 'ArrowFunctionExpression' &&
  node.parent.type === 'CallExpression' &&
  /^(toSorted|sort)$/.test(node.parent.callee.property?.name ?? '');

const isOne = (node) => node.type === 'Literal' && node.value === 1;

export const noReckoning = {
  meta: {
    type: 'problem',
    messages: { reckons: 'Commands compute nothing: {{what}} belongs into src/core.' },
    schema: [],
  },
  create(context) {
    const services = context.sourceCode.parserServices;
    const isNumber = (node) => {
      const type = services.getTypeAtLocation(node);
      return (type.isUnion() ? type.types : [type]).every(
        (one) => (one.flags & ts.TypeFlags.NumberLike) !== 0,
      );
    };
    const report = (node, what) => context.report({ node, messageId: 'reckons', data: { what } });
    return {
      BinaryExpression(node) {
        if (!ARITHMETIC.has(node.operator) || !isNumber(node.left) || !isNumber(node.right)) return;
        if ((node.operator === '+' || node.operator === '-') && (isOne(node.right) || isOne(node.left)))
          return;
        if (node.operator === '-' && isOrder(node.parent)) return;
        report(node, context.sourceCode.getText(node));
      },
      AssignmentExpression(node) {
        if (ASSIGNED.has(node.operator) && isNumber(node.left))
          report(node, context.sourceCode.getText(node));
      },
      MemberExpression(node) {
        if (node.object.type === 'Identifier' && node.object.name === 'Math' && node.property.name !== 'abs')
          report(node, context.sourceCode.getText(node));
      },
    };
  },
};
